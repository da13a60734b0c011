package org.roundsman.planned.store;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Target;
import org.roundsman.system.Rows;

/** The tables of planned work. */
public final class WindowTable {

    /**
     * When a repetition is over was worked out with the time zones that its sites had then; two days are more than any two
     * zones differ.
     */
    private static final Duration SLACK = Duration.ofDays(2);

    private static final String WHOLE = """
            select w.*, c.name as customer_name, s.id as site_now, s.name as site_name,
                case when w.reach = 'DEVICE' then coalesce(d.name, w.device_name) end as device_now,
                array(select z.time_zone from site z
                    where z.id = s.id or (w.reach = 'CUSTOMER' and z.customer_id = w.customer_id)
                    order by lower(z.name), z.id) as zones,
                array(select e.at from planned_work_end e where e.work_id = w.id order by e.at) as ended_at,
                array(select e.ended_by from planned_work_end e where e.work_id = w.id order by e.at) as ended_by
            from planned_work w
            join customer c on c.id = w.customer_id
            left join device d on d.id = w.device_id
            left join site s on s.id = coalesce(d.site_id, w.site_id)
            """;

    private static final String SEEN =
            " (?::bigint is null or w.customer_id = ?) and (?::bigint is null or s.id = ? or (w.reach = 'CUSTOMER'"
                    + " and w.customer_id = (select o.customer_id from site o where o.id = ?)))";

    private final Rows rows;

    public WindowTable(DataSource database) {
        this.rows = new Rows(database, "planned work");
    }

    /**
     * A site as far as planned work asks.
     *
     * @param customerId whose it is
     */
    public record SiteZone(long siteId, long customerId, ZoneId zone) {}

    /** Every site by its id. */
    public Map<Long, SiteZone> sites() {
        Map<Long, SiteZone> sites = new HashMap<>();
        rows.list(
                        "select id, customer_id, time_zone from site",
                        row -> new SiteZone(row.getLong(1), row.getLong(2), ZoneId.of(row.getString(3))))
                .forEach(site -> sites.put(site.siteId(), site));
        return sites;
    }

    public Optional<SiteZone> site(long siteId) {
        return rows
                .list(
                        "select id, customer_id, time_zone from site where id = ?",
                        row -> new SiteZone(row.getLong(1), row.getLong(2), ZoneId.of(row.getString(3))),
                        siteId)
                .stream()
                .findFirst();
    }

    /** The site of a device. */
    public OptionalLong siteOf(long deviceId) {
        return rows.list("select site_id from device where id = ?", row -> row.getLong(1), deviceId).stream()
                .mapToLong(Long::longValue)
                .findFirst();
    }

    /** Windows of that device and its site, or with no device of the site alone, that may reach beyond that moment. */
    public List<PlannedWindow> reaching(SiteZone site, OptionalLong deviceId, Instant from) {
        return rows.list(
                WHOLE + " where (w.over_at is null or w.over_at > ?) and ((w.reach = 'CUSTOMER' and w.customer_id = ?)"
                        + " or (w.reach = 'SITE' and w.site_id = ?) or (w.reach = 'DEVICE' and w.device_id = ?))"
                        + " order by w.id",
                StoredWindow::window,
                from.minus(SLACK),
                site.customerId(),
                site.siteId(),
                deviceId.isPresent() ? deviceId.getAsLong() : 0);
    }

    /** All windows that may reach beyond that moment. */
    public List<PlannedWindow> reaching(Instant from) {
        return open(null, null, from);
    }

    /**
     * The same of one customer (null for all) and one site (null for all), by id.
     *
     * @param siteId with the windows of its devices and of its customer
     */
    public List<PlannedWindow> open(Long customerId, Long siteId, Instant from) {
        return rows.list(
                WHOLE + " where" + SEEN + " and (w.over_at is null or w.over_at > ?) order by w.id",
                StoredWindow::window,
                customerId,
                customerId,
                siteId,
                siteId,
                siteId,
                from.minus(SLACK));
    }

    /** Those that are over, the latest first. */
    public List<PlannedWindow> past(Long customerId, Long siteId, Instant now, int most, long skip) {
        return rows.list(
                WHOLE + " where" + SEEN + " and w.over_at <= ? order by w.over_at desc, w.id desc limit ? offset ?",
                StoredWindow::window,
                customerId,
                customerId,
                siteId,
                siteId,
                siteId,
                now,
                most,
                skip);
    }

    /** How many are over. */
    public long countPast(Long customerId, Long siteId, Instant now) {
        return rows.list(
                        "select count(*) from planned_work w left join device d on d.id = w.device_id left join site s"
                                + " on s.id = coalesce(d.site_id, w.site_id) where" + SEEN + " and w.over_at <= ?",
                        row -> row.getLong(1),
                        customerId,
                        customerId,
                        siteId,
                        siteId,
                        siteId,
                        now)
                .get(0);
    }

    /** All of one customer (null for all), by id, after that id. */
    public List<PlannedWindow> after(Long customerId, Long siteId, long id, int most) {
        return rows.list(
                WHOLE + " where" + SEEN + " and w.id > ? order by w.id limit ?",
                StoredWindow::window,
                customerId,
                customerId,
                siteId,
                siteId,
                siteId,
                id,
                most);
    }

    public Optional<PlannedWindow> find(long id) {
        return rows.list(WHOLE + " where w.id = ?", StoredWindow::window, id).stream()
                .findFirst();
    }

    /** The same, and keeps others from changing it until the end of this thread's transaction. */
    public Optional<PlannedWindow> hold(long id) {
        rows.list("select id from planned_work where id = ? for update", row -> row.getLong(1), id);
        return find(id);
    }

    /** Stores a new one and returns its id; the window's own id does not count. */
    public long add(PlannedWindow window) {
        Target target = window.target();
        StoredWindow.Columns when = StoredWindow.columns(window.timing());
        return rows.list(
                        "insert into planned_work (reach, customer_id, site_id, device_id, device_name, title, reason,"
                                + " made_by, made_at, replaces, counts_from, over_at, kind, from_at, to_at, start_time,"
                                + " length_s, weekdays, which, first_day, last_day, skipped) values (?, ?, ?, ?, ?, ?, ?,"
                                + " ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) returning id",
                        row -> row.getLong(1),
                        target.reach().name(),
                        target.customerId(),
                        orNull(target.siteId()),
                        orNull(target.deviceId()),
                        target.device(),
                        window.title(),
                        window.reason(),
                        window.madeBy(),
                        window.madeAt(),
                        window.course().replaces().orElse(null),
                        window.course().countsFrom().orElse(null),
                        window.over().orElse(null),
                        when.kind(),
                        when.from(),
                        when.to(),
                        when.start(),
                        when.seconds(),
                        when.weekdays().toArray(Integer[]::new),
                        when.which(),
                        when.firstDay(),
                        when.lastDay(),
                        when.skipped().toArray(LocalDate[]::new))
                .get(0);
    }

    private static Long orNull(OptionalLong id) {
        return id.isPresent() ? id.getAsLong() : null;
    }

    /** Stores other words and times. */
    public void change(PlannedWindow window) {
        StoredWindow.Columns when = StoredWindow.columns(window.timing());
        rows.run(
                "update planned_work set title = ?, reason = ?, over_at = ?, kind = ?, from_at = ?, to_at = ?,"
                        + " start_time = ?, length_s = ?, weekdays = ?, which = ?, first_day = ?, last_day = ?,"
                        + " skipped = ? where id = ?",
                window.title(),
                window.reason(),
                window.over().orElse(null),
                when.kind(),
                when.from(),
                when.to(),
                when.start(),
                when.seconds(),
                when.weekdays().toArray(Integer[]::new),
                when.which(),
                when.firstDay(),
                when.lastDay(),
                when.skipped().toArray(LocalDate[]::new),
                window.id());
    }

    /** Notes that what goes on ended; the window says when it is over now. */
    public void end(PlannedWindow window, PlannedWindow.Ended ended) {
        rows.run(
                "insert into planned_work_end (work_id, at, ended_by) values (?, ?, ?) on conflict do nothing",
                window.id(),
                ended.at(),
                ended.by());
        rows.run(
                "update planned_work set over_at = ? where id = ?",
                window.over().orElse(null),
                window.id());
    }

    /** Stores that nothing counts any more. */
    public void stop(PlannedWindow window) {
        PlannedWindow.Course course = window.course();
        rows.run(
                "update planned_work set counts_until = ?, stop = ?, stopped_by = ?, over_at = ? where id = ?",
                course.countsUntil().orElse(null),
                course.stop().map(Enum::name).orElse(null),
                course.stoppedBy(),
                window.over().orElse(null),
                window.id());
    }
}
