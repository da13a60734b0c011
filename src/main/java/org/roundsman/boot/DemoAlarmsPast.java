package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.Verdict;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.History;
import org.roundsman.demo.PastOutages;
import org.roundsman.demo.PastOutages.Outage;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.system.Transaction;
import org.roundsman.triage.Impacts;

/** The alarms of the invented past, as they would have been raised, dealt with and cleared. Written before the first round. */
@ApplicationScoped
class DemoAlarmsPast {

    /** Three rounds without an answer. */
    private static final Duration UNTIL_SEEN = Duration.ofMinutes(3);

    private static final Duration UNTIL_BACK = Duration.ofSeconds(45);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss");

    /** Somebody takes what is bad enough, in office hours, some minutes after it was raised. */
    private static final String TAKEN = """
        with taken as (
            select id, alarm_id, raised + make_interval(mins => 2 + (id %% 17)::integer) as at
              from alarm_episode
             where caused_by is null and severity >= 5 and cleared < '%1$s'
               and extract(isodow from raised at time zone time_zone) < 6
               and (raised at time zone time_zone)::time between '08:00' and '18:00'
               and raised + make_interval(mins => 2 + (id %% 17)::integer) < cleared),
        told as (
            update alarm_episode e set operator = 'ACK', operator_by = '%2$s', taken_by = '%2$s'
              from taken where taken.id = e.id)
        insert into alarm_act (alarm_id, episode_id, at, by, kind) select alarm_id, id, at, '%2$s', 'TAKE' from taken
        """;

    private static final String WHO = "wren (invented)";

    private final AlarmDesk desk;
    private final Devices devices;
    private final Impacts impacts;
    private final DataSource database;

    @Inject
    DemoAlarmsPast(AlarmDesk desk, Devices devices, Impacts impacts, DataSource database) {
        this.desk = desk;
        this.devices = devices;
        this.impacts = impacts;
        this.database = database;
    }

    /** Writes them, unless there are alarms already. @param first when the fleet was sown: the past ends there */
    void fill(DemoFleet fleet, Map<Integer, Long> ids, Instant first) {
        if (alarms() > 0) {
            return;
        }
        Map<Long, Device> stored =
                devices.all().stream().collect(Collectors.toMap(device -> device.id, device -> device));
        List<Told> batch = new ArrayList<>();
        Set<AlarmKey> held = new HashSet<>();
        for (Outage outage : new PastOutages(fleet).between(first.minus(History.LENGTH), first.minus(UNTIL_SEEN))) {
            List<Told> told = told(outage, ids, stored);
            if (told.stream().anyMatch(one -> held.contains(one.key()))) {
                write(batch);
                batch.clear();
                held.clear();
            }
            told.forEach(one -> held.add(one.key()));
            batch.addAll(told);
        }
        write(batch);
        take(first);
    }

    /** Works out who suffered from each, as it is done of alarms that are raised: from the readings of the weeks before. */
    void suffered(Instant first) {
        for (Past past : past(first)) {
            Impact impact = impacts.of(past.siteId(), past.devices(), past.began());
            if (impact.staff().isPresent()) {
                with(statement -> statement.executeUpdate(
                        "update alarm_episode set staff = " + impact.staff().getAsInt()
                                + ", guest = " + impact.guest().orElse(0) + ", other = "
                                + impact.other().orElse(0)
                                + ", service_hours = " + impact.serviceHours() + " where id = " + past.episode()));
            }
        }
    }

    private record Past(long episode, long siteId, List<Long> devices, Instant began) {}

    private List<Past> past(Instant first) {
        return with(statement -> {
            List<Past> found = new ArrayList<>();
            try (var row =
                    statement.executeQuery("select e.id, e.site_id, e.began, array_remove(array_agg(a.device_id) ||"
                            + " e.device_id, null) as devices from alarm_episode e left join alarm_affected a on a.episode_id = e.id"
                            + " where e.caused_by is null and e.staff is null and e.cleared < '" + first + "'"
                            + " and e.site_id is not null group by e.id order by e.began, e.id")) {
                while (row.next()) {
                    found.add(new Past(
                            row.getLong("id"),
                            row.getLong("site_id"),
                            List.of((Long[]) row.getArray("devices").getArray()),
                            row.getObject("began", java.time.OffsetDateTime.class)
                                    .toInstant()));
                }
            }
            return found;
        });
    }

    private long alarms() {
        return with(statement -> {
            try (var row = statement.executeQuery("select count(*) from alarm")) {
                row.next();
                return row.getLong(1);
            }
        });
    }

    private void take(Instant first) {
        with(statement -> statement.executeUpdate(TAKEN.formatted(first, WHO)));
    }

    private void write(List<Told> batch) {
        List<Signal> raises = new ArrayList<>();
        List<Verdict> verdicts = new ArrayList<>();
        List<Signal> clears = new ArrayList<>();
        for (Told told : batch) {
            Instant began = told.outage().from();
            raises.add(new Signal.Raise(told.key(), told.severity(), began, began.plus(UNTIL_SEEN), told.text()));
            verdicts.add(told.verdict());
            clears.add(new Signal.Clear(told.key(), told.outage().to().plus(UNTIL_BACK), "Answers again."));
        }
        desk.accept(raises, verdicts);
        desk.accept(clears, List.of());
    }

    /** One alarm of an outage. */
    private record Told(Outage outage, AlarmKey key, Severity severity, String text, Verdict verdict) {}

    private List<Told> told(Outage outage, Map<Integer, Long> ids, Map<Long, Device> stored) {
        List<Device> there = outage.devices().stream()
                .map(DemoDevice::number)
                .flatMap(number -> Optional.ofNullable(ids.get(number)).map(stored::get).stream())
                .toList();
        if (there.isEmpty()) {
            return List.of();
        }
        return outage.line() ? line(outage, there) : List.of(one(outage, there.get(0)));
    }

    private List<Told> line(Outage outage, List<Device> there) {
        long site = there.get(0).site.id;
        AlarmKey cause = AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(site));
        List<Told> told = new ArrayList<>();
        Set<Long> affected = there.stream().map(device -> device.id).collect(Collectors.toSet());
        List<String> evidence = List.of(
                "The last answer of the site came at " + time(outage) + ".",
                there.size() + " of " + there.size() + " devices have been silent since.");
        told.add(new Told(
                outage,
                cause,
                Severity.CRITICAL,
                "Nothing at " + outage.site().name() + " answers.",
                new Verdict(cause, CauseKind.UPLINK_LOST, Optional.empty(), evidence, unknown(there), affected, true)));
        for (Device device : there) {
            AlarmKey key = AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device.id));
            Impact none = Impact.unknown(0, false);
            told.add(new Told(
                    outage,
                    key,
                    Severity.MAJOR,
                    device.name + " does not answer.",
                    new Verdict(key, CauseKind.UPLINK_LOST, Optional.of(cause), List.of(), none, Set.of(), true)));
        }
        return told;
    }

    private static Told one(Outage outage, Device device) {
        if (outage.flaps()) {
            return told(
                    outage,
                    device,
                    AlarmType.FLAPPING,
                    CauseKind.FLAPPING,
                    "It was silent again and again, and answered in between.");
        }
        CauseKind cause = outage.powerless() ? CauseKind.PORT_NOT_DELIVERING : CauseKind.DEVICE_LOST;
        String port = outage.powerless() ? "Its switch port delivered no power." : "Its switch answered on.";
        return told(outage, device, AlarmType.DEVICE_SILENT, cause, port);
    }

    private static Told told(Outage outage, Device device, AlarmType type, CauseKind cause, String evidence) {
        AlarmKey key = AlarmKey.of(type, Resource.device(device.id));
        boolean flaps = type == AlarmType.FLAPPING;
        Impact impact = unknown(List.of(device));
        String last = device.name + " last answered at " + time(outage) + "; the others of the site answered on.";
        return new Told(
                outage,
                key,
                flaps ? Severity.MINOR : Severity.MAJOR,
                device.name + (flaps ? " comes and goes." : " does not answer."),
                new Verdict(
                        key,
                        cause,
                        Optional.empty(),
                        flaps ? List.of(evidence) : List.of(last, evidence),
                        impact,
                        Set.of(),
                        true));
    }

    private static int points(List<Device> there) {
        return (int) there.stream()
                .filter(device -> device.kind == org.roundsman.fleet.DeviceKind.ACCESS_POINT)
                .count();
    }

    /** Who would have been there is worked out when the readings are there too. */
    private static Impact unknown(List<Device> there) {
        return Impact.unknown(points(there), false);
    }

    private static String time(Outage outage) {
        ZoneId zone = outage.site().zone();
        return CLOCK.format(outage.from().atZone(zone));
    }

    private interface Question<T> {
        T ask(Statement statement) throws SQLException;
    }

    private <T> T with(Question<T> question) {
        try {
            return Transaction.run(database, connection -> {
                try (Statement statement = connection.createStatement()) {
                    return question.ask(statement);
                }
            });
        } catch (SQLException e) {
            throw new IllegalStateException("The invented alarms could not be written: " + e.getMessage(), e);
        }
    }
}
