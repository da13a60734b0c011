package org.roundsman.firmware.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.firmware.FigureChange;
import org.roundsman.firmware.FirmwareChange;
import org.roundsman.firmware.FirmwarePlace;

/** Keeps the changes of firmware that devices were seen to make. */
public final class ChangeTable {

    private static final String FROM = """
         from firmware_change g
          join device d on d.id = g.device_id
          join site s on s.id = d.site_id
          join customer c on c.id = s.customer_id
          left join model m on m.id = d.model_id
          left join firmware_line l on l.id = m.firmware_line_id
         where (?::bigint is null or c.id = ?) and (?::bigint is null or d.id = ?)
        """;

    /**
     * The read that brought the other version brought another serial number as well: the changes that one read brings have its
     * time. The same number in other letters is the same unit.
     */
    private static final String OTHER_UNIT = """
         from device_event e
         where e.device_id = g.device_id and e.at = g.at and e.kind = 'FACT_CHANGED' and e.title = 'Serial number changed'
           and lower(btrim(e.old_value, E' \\t\\r\\n')) <> lower(btrim(e.new_value, E' \\t\\r\\n'))
        """;

    private static final String SELECT = """
        select g.id, d.id as device_id, d.name as device, g.at, g.old_version, g.new_version, g.restarted_at,
               g.compared_at, g.settled, c.id as customer_id, c.name as customer, s.id as site_id, s.name as site,
               s.time_zone, m.id as model_id, m.maker || ' ' || m.name as model, l.id as line_id, l.name as line,
        """
            + " (select e.old_value" + OTHER_UNIT + " order by e.id limit 1) as old_serial,"
            + " (select e.new_value" + OTHER_UNIT + " order by e.id limit 1) as new_serial";

    private final Sql sql;

    public ChangeTable(DataSource database) {
        this.sql = new Sql(database);
    }

    private record Row(FirmwareChange change) {}

    private record OfChange(long changeId, FigureChange figure) {}

    /**
     * A change whose figures are still to be worked out.
     *
     * @param before the change of the same device before it
     * @param next the one after it
     */
    public record Open(
            long id,
            long deviceId,
            ZoneId zone,
            Instant at,
            Optional<Instant> restartedAt,
            Optional<Instant> before,
            Optional<Instant> next) {}

    public long count(Long customer, OptionalLong device) {
        return sql.rows("select count(*)" + FROM, row -> row.getLong(1), customer, customer, device, device)
                .get(0);
    }

    /** The latest first. */
    public List<FirmwareChange> page(Long customer, OptionalLong device, int size, long skip) {
        List<Row> rows = sql.rows(
                SELECT + FROM + " order by g.at desc, g.id desc limit ? offset ?",
                row -> new Row(change(row)),
                customer,
                customer,
                device,
                device,
                size,
                skip);
        Map<Long, List<FigureChange>> figures =
                figures(rows.stream().map(row -> row.change().id()).toList());
        return rows.stream()
                .map(row -> with(row.change(), figures.getOrDefault(row.change().id(), List.of())))
                .toList();
    }

    /** Those of one customer between these moments in which the unit stayed, by time, without figures. */
    public List<FirmwareChange> between(long customer, Instant from, Instant to) {
        return sql.rows(
                SELECT + FROM + " and g.at >= ? and g.at < ? and not exists (select 1" + OTHER_UNIT
                        + ") order by g.at, g.id",
                ChangeTable::change,
                customer,
                customer,
                OptionalLong.empty(),
                OptionalLong.empty(),
                from,
                to);
    }

    private Map<Long, List<FigureChange>> figures(List<Long> changes) {
        return sql
                .rows(
                        "select * from firmware_change_figure where change_id = any (?) order by figure",
                        row -> new OfChange(
                                row.getLong("change_id"),
                                new FigureChange(
                                        FigureChange.Figure.valueOf(row.getString("figure")),
                                        row.getDouble("before"),
                                        row.getDouble("after"),
                                        row.getInt("quarters"))),
                        changes)
                .stream()
                .collect(Collectors.groupingBy(
                        OfChange::changeId, Collectors.mapping(OfChange::figure, Collectors.toList())));
    }

    private static FirmwareChange change(ResultSet row) throws SQLException {
        FirmwarePlace place = new FirmwarePlace(
                row.getLong("customer_id"),
                row.getString("customer"),
                row.getLong("site_id"),
                row.getString("site"),
                ZoneId.of(row.getString("time_zone")),
                Sql.number(row, "model_id"),
                Sql.text(row, "model"),
                Sql.number(row, "line_id"),
                Sql.text(row, "line"));
        String newSerial = Sql.text(row, "new_serial");
        return new FirmwareChange(
                row.getLong("id"),
                row.getLong("device_id"),
                row.getString("device"),
                place,
                Sql.moment(row, "at").orElseThrow(),
                row.getString("old_version"),
                row.getString("new_version"),
                Optional.ofNullable(row.getString("old_serial"))
                        .map(old -> new FirmwareChange.OtherUnit(old, newSerial)),
                Sql.moment(row, "restarted_at"),
                Sql.moment(row, "compared_at"),
                row.getBoolean("settled"),
                List.of());
    }

    private static FirmwareChange with(FirmwareChange one, List<FigureChange> figures) {
        return new FirmwareChange(
                one.id(),
                one.deviceId(),
                one.device(),
                one.place(),
                one.at(),
                one.old(),
                one.fresh(),
                one.otherUnit(),
                one.restartedAt(),
                one.comparedAt(),
                one.settled(),
                figures);
    }

    /** The number of the last event that was looked at. */
    public long lookedAt() {
        return sql.rows("select event_id from firmware_look", row -> row.getLong(1))
                .get(0);
    }

    public void lookedAt(long event) {
        sql.run("update firmware_look set event_id = greatest(event_id, ?)", event);
    }

    /**
     * Adds a change unless it is there; of a device that is gone none is added. Where another unit took the place there is
     * nothing to compare.
     */
    public boolean add(long event, long device, Instant at, String old, String fresh) {
        return sql.run(
                        "insert into firmware_change (device_id, event_id, at, old_version, new_version, settled)"
                                + " select g.device_id, ?, g.at, ?, ?, exists (select 1" + OTHER_UNIT + ")"
                                + " from (select id as device_id, ?::timestamptz as at from device where id = ?) g"
                                + " on conflict do nothing",
                        event,
                        old,
                        fresh,
                        at,
                        device)
                > 0;
    }

    /** Looks for the restart about the same time, of changes since then that have none yet. */
    public void findRestarts(Instant since) {
        sql.run(
                "update firmware_change g set restarted_at = (select e.at from device_event e where e.device_id = g.device_id"
                        + " and e.kind = 'RESTARTED' and e.at between g.at - interval '2 hours' and g.at + interval '1 hour'"
                        + " order by abs(extract(epoch from e.at - g.at)) limit 1)"
                        + " where g.restarted_at is null and g.at >= ?"
                        + " and exists (select 1 from device_event e where e.device_id = g.device_id and e.kind = 'RESTARTED'"
                        + " and e.at between g.at - interval '2 hours' and g.at + interval '1 hour')",
                since);
    }

    /** Changes up to then whose figures are not settled and were not worked out lately; those never worked out first. */
    public List<Open> open(Instant upTo, Instant notSince, int most) {
        return sql.rows(
                "select g.id, g.device_id, s.time_zone, g.at, g.restarted_at,"
                        + " (select max(b.at) from firmware_change b where b.device_id = g.device_id and b.at < g.at) as before,"
                        + " (select min(b.at) from firmware_change b where b.device_id = g.device_id and b.at > g.at) as next"
                        + " from firmware_change g join device d on d.id = g.device_id join site s on s.id = d.site_id"
                        + " where not g.settled and g.at <= ? and (g.compared_at is null or g.compared_at <= ?)"
                        + " order by g.compared_at nulls first, g.at desc limit ?",
                row -> new Open(
                        row.getLong("id"),
                        row.getLong("device_id"),
                        ZoneId.of(row.getString("time_zone")),
                        Sql.moment(row, "at").orElseThrow(),
                        Sql.moment(row, "restarted_at"),
                        Sql.moment(row, "before"),
                        Sql.moment(row, "next")),
                upTo,
                notSince,
                most);
    }

    /** Keeps what was worked out, in place of what was there. */
    public void keep(long change, Instant at, boolean settled, List<FigureChange> figures) {
        sql.run("delete from firmware_change_figure where change_id = ?", change);
        for (FigureChange figure : figures) {
            sql.run(
                    "insert into firmware_change_figure (change_id, figure, before, after, quarters)"
                            + " select id, ?, ?, ?, ? from firmware_change where id = ? on conflict do nothing",
                    figure.figure().name(),
                    figure.before(),
                    figure.after(),
                    figure.quarters(),
                    change);
        }
        sql.run("update firmware_change set compared_at = ?, settled = ? where id = ?", at, settled, change);
    }
}
