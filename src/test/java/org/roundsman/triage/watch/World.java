package org.roundsman.triage.watch;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.sql.DataSource;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.AlarmsChanged;
import org.roundsman.alarms.DeskFixture;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Signal;
import org.roundsman.audit.Actor;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.DeviceStates;
import org.roundsman.readings.PastClients;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.store.BatchStore;
import org.roundsman.rules.RuleSet;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.store.WiringRows;
import org.roundsman.triage.Impacts;
import org.roundsman.triage.store.FleetRows;

/** Invented devices whose rounds are stored as real ones are, once a minute each, while a clock is put forward. */
final class World {

    static final Instant START = DeskFixture.NOON;
    private static final int INTERVAL = 60;
    private static final int STEP = 10;

    final DeskFixture desk;
    final AlarmBook book;
    private final AlarmDesk alarms;
    private final DataSource database;
    final List<Long> portsRead = new ArrayList<>();
    final List<AlarmsChanged> told = new ArrayList<>();
    final List<Long> askedSoon = new ArrayList<>();
    private final BatchStore store;
    private final Map<Long, Outcome> outcomes = new LinkedHashMap<>();
    private final Map<Long, Instant> booted = new HashMap<>();
    private final Impacts impacts;
    private final PlannedWork planned;
    private Watch watch;
    private boolean watching = true;
    private Instant now = START;

    World(String name) {
        desk = new DeskFixture(name);
        database = desk.database;
        book = new AlarmBook(database);
        alarms = new AlarmDesk(database, desk.clock, Actor::itself, told::add);
        store = new BatchStore(database, desk.clock);
        planned = new PlannedWork(database, desk.clock);
        impacts = new Impacts(database, new PastClients(database), new PastSpans(database), planned);
        restartService();
    }

    /** As a new process would: with nothing but what is stored. */
    void restartService() {
        watch = new Watch(
                new Tools(
                        new FleetRows(database),
                        new DeviceStates(database),
                        this::wiring,
                        book,
                        alarms,
                        RuleSet::shipped,
                        impacts,
                        planned::now,
                        portsRead::add,
                        askedSoon::add,
                        () -> watching ? outcomes.size() : 0),
                desk.clock);
    }

    private SiteWiring wiring(long site) {
        try (Connection connection = database.getConnection()) {
            return WiringRows.of(connection, site);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    long device(long site, String name, String kind) {
        long id = desk.fleet.device(site, name, kind);
        outcomes.put(id, Outcome.ANSWERED);
        booted.put(id, START.minus(Duration.ofDays(30)));
        watch.forget();
        return id;
    }

    /** Sets on which port it hangs. */
    void hangs(long device, long on, int port) {
        desk.fleet.run(
                "insert into wiring_attachment (device_id, parent_id, port, how, seen_at) values (?, ?, ?, 'LLDP',"
                        + " now())",
                device,
                on,
                port);
        desk.fleet.run(
                "insert into wiring_port (device_id, number, name, state) values (?, ?, ?, 1)", on, port, "" + port);
    }

    /** The ports of a device were read now. */
    void portRead(long device, int port, int state) {
        desk.fleet.run("update wiring_port set state = ? where device_id = ? and number = ?", state, device, port);
        desk.fleet.run(
                "insert into wiring_read (device_id, tried_at, outcome, read_at, state_at) values (?, ?, 0, ?, ?)"
                        + " on conflict (device_id) do update set state_at = excluded.state_at",
                device,
                now.atOffset(java.time.ZoneOffset.UTC),
                now.atOffset(java.time.ZoneOffset.UTC),
                now.atOffset(java.time.ZoneOffset.UTC));
    }

    /** Everything answers, and no alarm is left. */
    void wellAgain() {
        desk.fleet.run("update device set paused = false");
        outcomes.replaceAll((device, outcome) -> Outcome.ANSWERED);
        watch.forget();
        run(Duration.ofMinutes(2));
        alarms.accept(List.copyOf(book.active().keySet().stream()
                .map(key -> (Signal) new Signal.Clear(key, now, "The test is over."))
                .toList()));
        rest(Duration.ofMinutes(6));
        run(Duration.ofMinutes(2));
    }

    void all(Outcome outcome, long... devices) {
        for (long device : devices) {
            outcomes.put(device, outcome);
        }
    }

    void silent(long... devices) {
        all(Outcome.NO_REPLY, devices);
    }

    void answers(long... devices) {
        all(Outcome.ANSWERED, devices);
    }

    void restarts(long... devices) {
        for (long device : devices) {
            booted.put(device, now);
            outcomes.put(device, Outcome.ANSWERED);
        }
    }

    /** Time goes by, with rounds and passes. */
    void run(Duration time) {
        Instant end = now.plus(time);
        while (now.isBefore(end)) {
            now = now.plusSeconds(STEP);
            desk.clock.set(now);
            List<Reading> due = new ArrayList<>();
            outcomes.forEach((device, outcome) -> {
                if (askedNow(device)) {
                    due.add(reading(device, outcome));
                }
            });
            store(due);
        }
    }

    private boolean askedNow(long device) {
        long phase = device * 7 % INTERVAL;
        return phase - phase % STEP == now.getEpochSecond() % INTERVAL;
    }

    /** Time goes by until just after the next round of a device, so that it is asked again a minute later. */
    void runPastRoundOf(long device) {
        do {
            run(Duration.ofSeconds(STEP));
        } while (!askedNow(device));
    }

    /** Time goes by in which this process does not run. */
    void rest(Duration time) {
        now = now.plus(time);
        desk.clock.set(now);
    }

    /** Time goes by in which it runs, but no round comes. */
    void stall(Duration time) {
        rest(time);
        pass(Set.of());
    }

    private void store(List<Reading> due) {
        Set<Long> touched = new HashSet<>();
        due.forEach(reading -> touched.add(reading.deviceId()));
        try {
            if (!due.isEmpty()) {
                store.store(due);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        pass(touched);
    }

    void pass(Set<Long> touched) {
        watch.pass(touched, true);
    }

    void pass() {
        watch.forget();
        pass(Set.of());
    }

    private Reading reading(long device, Outcome outcome) {
        if (outcome != Outcome.ANSWERED) {
            return Reading.empty(device, now, outcome, INTERVAL);
        }
        return new Reading(
                device,
                now,
                outcome,
                INTERVAL,
                Values.builder(Subject.DEVICE)
                        .set(
                                Metric.UPTIME,
                                Duration.between(booted.get(device), now).toSeconds())
                        .set(Metric.CLIENTS, 3)
                        .build(),
                List.of(),
                List.of(),
                Optional.empty());
    }

    Instant now() {
        return now;
    }

    Optional<OpenAlarm> silence(long device) {
        return alarm(AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device)));
    }

    Optional<OpenAlarm> alarm(AlarmKey key) {
        return Optional.ofNullable(book.active().get(key));
    }

    /** Active alarms that nothing explains. */
    List<OpenAlarm> causes() {
        return book.active().values().stream()
                .filter(alarm -> alarm.causedBy().isEmpty())
                .toList();
    }

    long changes() {
        return desk.fleet.count("alarm_change");
    }

    String summary(AlarmKey key) {
        return desk.fleet
                .rows(
                        "select e.summary from alarm a join alarm_episode e on e.id = a.episode_id where a.type = ?"
                                + " and a.resource_id = ?",
                        key.type().id(),
                        key.resource().id())
                .get(0)
                .get(0)
                .toString();
    }
}
