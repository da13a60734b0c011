package org.roundsman.reports.figures;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.measure.Condition;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.PastClients;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.reports.Outage;
import org.roundsman.reports.ReportSubject;
import org.roundsman.triage.PastPeople;

/** Writes what happened at an invented site in Berlin, as rows, and asks for what a report makes of it. */
public final class PastOfSite {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    public final ReadingsFixture fleet;
    public final long customer;
    public final long site;
    public final String name;
    private final DataSource database;

    /** Of a customer of its own. */
    public PastOfSite(DataSource database) {
        this.database = database;
        this.fleet = new ReadingsFixture(database);
        this.name = "Pebblegate Dental " + fleet.count("customer");
        this.customer = fleet.customer(name);
        this.site = fleet.site(customer, "Mill Lane", "Europe/Berlin");
    }

    public PastPeople people(Instant asOf) {
        return new PastPeople(new PastClients(database), planned(asOf));
    }

    public WatchedSites watched(Instant asOf) {
        return new WatchedSites(database, new PastSpans(database), planned(asOf));
    }

    private PlannedWork planned(Instant asOf) {
        return new PlannedWork(database, Clock.fixed(asOf, ZoneOffset.UTC));
    }

    public static Instant at(String local) {
        return LocalDateTime.parse(local).atZone(BERLIN).toInstant();
    }

    public static OffsetDateTime stored(Instant at) {
        return at == null ? null : at.atOffset(ZoneOffset.UTC);
    }

    /** Of that kind, and there since long. */
    public long device(String device, String kind) {
        long id = fleet.device(site, device, kind);
        fleet.run("update device set created_at = timestamptz '2025-01-01' where id = ?", id);
        return id;
    }

    public void silent(long device, String from, String to) {
        span(device, from, to, Condition.SILENT);
    }

    public void span(long device, String from, String to, Condition condition) {
        fleet.run(
                "insert into span (device_id, from_at, to_at, condition) values (?, ?, ?, ?)",
                device,
                stored(at(from)),
                stored(at(to)),
                condition.code());
    }

    /** So many clients in each hour of the week before that moment. */
    public void usually(long device, String at, int hours, double clients) {
        for (int quarter = 0; quarter < 4 * hours; quarter++) {
            Instant when = at(at).minus(Duration.ofDays(7)).plus(Duration.ofMinutes(15L * quarter));
            fleet.run(
                    "insert into quarter_device (device_id, at, clients_n, clients_min, clients_mean, clients_max)"
                            + " values (?, ?, 15, 0, ?, 99)",
                    device,
                    stored(when),
                    clients);
        }
    }

    /**
     * An alarm; its number and that of its episode are the same where it is raised once.
     *
     * @param device null for one of the site
     * @param cause name of a {@code CauseKind}
     * @param explainedBy episode, or null
     */
    public long episode(String type, Long device, String from, String to, String cause, Long explainedBy) {
        long alarm = fleet.id(
                "insert into alarm (type, resource_kind, resource_id, episode_id) values (?, ?, ?, 0) on conflict (type,"
                        + " resource_kind, resource_id, part, qualifier) do update set episode_id = 0 returning id",
                type,
                device == null ? "SITE" : "DEVICE",
                device == null ? site : device);
        Instant began = at(from);
        return fleet.id(
                "insert into alarm_episode (alarm_id, type, device_id, customer_id, customer, site_id, site, time_zone,"
                        + " resource_name, place, began, raised, changed, cleared, severity, highest, text, text_at, cause,"
                        + " caused_by, caused_by_episode) values (?, ?, ?, ?, ?, ?, 'Mill Lane', 'Europe/Berlin',"
                        + " coalesce((select name from device where id = ?), 'Mill Lane'), '', ?, ?, ?, ?, 5, 6, 'seen', ?,"
                        + " ?, (select alarm_id from alarm_episode where id = ?), ?) returning id",
                alarm,
                type,
                device,
                customer,
                name,
                site,
                device,
                stored(began),
                stored(began.plusSeconds(120)),
                stored(began.plusSeconds(120)),
                to == null ? null : stored(at(to)),
                stored(began),
                cause,
                explainedBy,
                explainedBy);
    }

    public void affects(long episode, long device) {
        fleet.run("insert into alarm_affected (episode_id, device_id, name) values (?, ?, 'ap')", episode, device);
    }

    public void act(long episode, String at, String kind) {
        fleet.run(
                "insert into alarm_act (alarm_id, episode_id, at, by, kind) select alarm_id, id, ?, 'wren', ? from"
                        + " alarm_episode where id = ?",
                stored(at(at)),
                kind,
                episode);
    }

    /** A unit with that serial number stands there from then on. */
    public void stands(long device, String serial, String from) {
        fleet.run(
                "update unit_stay set until_at = ? where device_id = ? and until_at is null", stored(at(from)), device);
        long unit = fleet.id(
                "insert into unit (customer_id, serial, known_since) values (?, ?, ?) returning id",
                customer,
                serial,
                stored(at(from)));
        fleet.run(
                "insert into unit_stay (unit_id, customer_id, site_id, device_id, device_name, site_name, from_at, standing)"
                        + " values (?, ?, ?, ?, 'ap', 'Mill Lane', ?, 'READ')",
                unit,
                customer,
                site,
                device,
                stored(at(from)));
    }

    public void work(String reach, Long device, String title, String from, String to) {
        fleet.run(
                "insert into planned_work (reach, customer_id, site_id, device_id, title, kind, from_at, to_at, made_by,"
                        + " made_at, over_at) values (?, ?, ?, ?, ?, 'ONCE', ?, ?, 'wren', now(), ?)",
                reach,
                customer,
                reach.equals("CUSTOMER") ? null : site,
                device,
                title,
                stored(at(from)),
                stored(at(to)),
                stored(at(to)));
    }

    public void runs(long device, String at, String old, String fresh) {
        fleet.run(
                "insert into firmware_change (device_id, event_id, at, old_version, new_version) values (?, ?, ?, ?, ?)",
                device,
                fleet.count("firmware_change") + 1,
                stored(at(at)),
                old,
                fresh);
    }

    List<SiteTimes> times(ReportSubject subject, Instant asOf) {
        return watched(asOf).of(subject, asOf);
    }

    PastEvents events(ReportSubject subject, Instant asOf) {
        return PastEvents.of(database, subject, asOf);
    }

    List<Outage> outages(ReportSubject subject, Instant asOf) {
        Outages outages = new Outages(people(asOf), events(subject, asOf));
        return Outages.sorted(times(subject, asOf).stream()
                        .flatMap(times -> outages.of(times).stream())
                        .toList())
                .stream()
                .map(Outages.Found::outage)
                .toList();
    }
}
