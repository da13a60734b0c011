package org.roundsman.outages;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import javax.sql.DataSource;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.audit.Actor;
import org.roundsman.demo.AgentHost;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.Faults;
import org.roundsman.demo.SetClock;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.DeviceStates;
import org.roundsman.readings.PastClients;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.readings.store.BatchStore;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.live.Judging;
import org.roundsman.testing.TestDatabase;
import org.roundsman.topology.PlainWiring;
import org.roundsman.topology.SiteWiring;
import org.roundsman.topology.WiringStore;
import org.roundsman.topology.store.WiringRows;
import org.roundsman.triage.Impacts;
import org.roundsman.triage.store.FleetRows;
import org.roundsman.triage.watch.Tools;
import org.roundsman.triage.watch.Watch;

/**
 * Three invented sites of three customers, from the agents on loopback to the alarms: visits by SNMP, storing, reading of
 * wiring, rules, and the watch for causes are the service's own. Only its threads are not: time is put forward five seconds
 * at a time, and everybody lives in it, so that it does not matter how fast the machine is. Each device is visited once a
 * minute. A visit that nobody answers is stored five seconds after it began: with the default settings it takes four.
 */
final class Town implements AutoCloseable {

    static final Duration INTERVAL = Duration.ofMinutes(1);
    static final String CLINIC = "Market Row";
    static final String SHOP = "Riverside";
    static final String SCHOOL = "Garden Building";
    private static final List<String> SITES = List.of(CLINIC, SHOP, SCHOOL);
    private static final Duration STEP = Duration.ofSeconds(5);
    private static final Duration PORTS_EVERY = Duration.ofMinutes(3);
    /** Devices of one site fall into so many groups that are visited together. */
    private static final int GROUPS = 4;

    final AlarmBook book;
    final Faults faults;
    final ReadingsFixture rows;
    private final DataSource database;
    private final SetClock clock;
    private final DemoFleet fleet;
    private final AgentHost agents;
    private final Visits visits;
    private final AlarmDesk desk;
    private final BatchStore store;
    private final WiringStore wiring;
    private final Map<Long, Long> siteOf = new HashMap<>();
    private final Map<String, Long> ids = new HashMap<>();
    private final Map<String, Long> siteIds = new HashMap<>();
    private final Map<Long, Instant> portsRead = new HashMap<>();
    private final Set<Long> portsWanted = new TreeSet<>();
    private final Set<Long> asked = new TreeSet<>();
    private final List<Reading> late = new ArrayList<>();
    private Watch watch;
    private Judging rules;
    private Instant now;

    Town(String name, int port) {
        database = TestDatabase.fresh(name);
        rows = new ReadingsFixture(database);
        fleet = DemoFleet.of(DemoFleet.USUAL_SIZE, DemoFleet.USUAL_SEED, port);
        now = quietTime();
        clock = new SetClock(now.toString());
        faults = Faults.byHandOnly(fleet, clock);
        agents = AgentHost.start(fleet, faults, clock);
        visits = new Visits(clock, INTERVAL);
        book = new AlarmBook(database);
        desk = new AlarmDesk(database, clock, Actor::itself, changed -> {});
        store = new BatchStore(database, clock);
        wiring = PlainWiring.store(database, clock);
        SITES.forEach(this::enter);
        restartService();
        run(Duration.ofMinutes(1));
        ids.values().forEach(id -> wiring.full(id, siteOf.get(id), visits.wiring(id, true)));
        run(Duration.ofMinutes(2));
    }

    /** A time on a working day around which no device of these sites restarts by itself. */
    private Instant quietTime() {
        Faults plain = Faults.byHandOnly(fleet, java.time.Clock.systemUTC());
        Instant at = Instant.parse("2026-11-25T10:00:00Z");
        while (!quiet(plain, at)) {
            at = at.plus(Duration.ofDays(1));
        }
        return at;
    }

    private boolean quiet(Faults plain, Instant at) {
        return SITES.stream().flatMap(name -> site(name).devices().stream()).allMatch(device -> plain.silences(
                        device,
                        at.minus(Duration.ofHours(1)).toEpochMilli(),
                        at.plus(Duration.ofHours(4)).toEpochMilli())
                .isEmpty());
    }

    private void enter(String name) {
        DemoSite site = site(name);
        long customer = rows.customer(fleet.customers().get(site.customer()).name());
        long id = rows.site(customer, name, site.zone().getId());
        siteIds.put(name, id);
        for (DemoDevice device : site.devices()) {
            long deviceId = rows.device(id, device.name(), device.kind().name());
            rows.run("update device set host = ?, port = ? where id = ?", device.host(), device.port(), deviceId);
            ids.put(device.name(), deviceId);
            siteOf.put(deviceId, id);
            visits.watch(deviceId, device);
        }
    }

    /** As a new process would begin: with nothing but what is stored. */
    void restartService() {
        PlannedWork planned = new PlannedWork(database, clock);
        Impacts impacts = new Impacts(database, new PastClients(database), new PastSpans(database), planned);
        watch = new Watch(
                new Tools(
                        new FleetRows(database),
                        new DeviceStates(database),
                        this::wiringOf,
                        book,
                        desk,
                        RuleSet::shipped,
                        impacts,
                        planned::now,
                        portsWanted::add,
                        asked::add,
                        ids::size),
                clock);
        rules = new Judging(database, book, clock);
    }

    private SiteWiring wiringOf(long site) {
        try (Connection connection = database.getConnection()) {
            return WiringRows.of(connection, site);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Time goes by, with rounds. */
    void run(Duration time) {
        Instant end = now.plus(time);
        while (now.isBefore(end)) {
            step();
        }
    }

    private void step() {
        now = now.plus(STEP);
        clock.set(now);
        List<Reading> stored = new ArrayList<>(late);
        late.clear();
        List<CompletableFuture<Reading>> going = new ArrayList<>();
        ids.values().stream().filter(this::due).forEach(id -> going.add(visits.round(id)));
        for (CompletableFuture<Reading> visit : going) {
            Reading reading = visit.join();
            (unanswered(reading) ? late : stored).add(reading);
        }
        outOfTurn().stream().filter(reading -> !unanswered(reading)).forEach(stored::add);
        ports();
        store(stored);
    }

    private static boolean unanswered(Reading reading) {
        return reading.outcome().kind() == Outcome.Kind.UNANSWERED;
    }

    private boolean due(long id) {
        long phase = id % GROUPS * INTERVAL.toSeconds() / GROUPS;
        return Math.floorMod(now.getEpochSecond(), INTERVAL.toSeconds()) == phase;
    }

    private List<Reading> outOfTurn() {
        List<Reading> readings = asked.stream()
                .filter(id -> !due(id))
                .map(id -> visits.round(id).join())
                .toList();
        asked.clear();
        return readings;
    }

    /** At the usual pace, and where somebody wants to know. */
    private void ports() {
        for (long id : ids.values()) {
            boolean due = !now.isBefore(portsRead.getOrDefault(id, Instant.MIN).plus(PORTS_EVERY));
            if ((due || portsWanted.contains(id)) && visits.reachable(id)) {
                portsRead.put(id, now);
                wiring.states(id, visits.wiring(id, false));
            }
        }
        portsWanted.clear();
    }

    private void store(List<Reading> readings) {
        try {
            store.store(readings);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        desk.accept(rules.judge(readings));
        Set<Long> touched = new HashSet<>();
        readings.forEach(reading -> touched.add(reading.deviceId()));
        watch.pass(touched, true);
    }

    Instant now() {
        return now;
    }

    DemoDevice device(String name) {
        return fleet.devices().stream()
                .filter(device -> device.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    DemoSite site(String name) {
        return fleet.sites().stream()
                .filter(site -> site.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    List<DemoSite> sites() {
        return SITES.stream().map(this::site).toList();
    }

    long id(String device) {
        return ids.get(device);
    }

    long siteId(String site) {
        return siteIds.get(site);
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

    @Override
    public void close() {
        agents.close();
        visits.close();
    }
}
