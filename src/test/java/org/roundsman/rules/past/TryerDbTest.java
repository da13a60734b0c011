package org.roundsman.rules.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.DeviceHistory;
import org.roundsman.readings.PastReadings;
import org.roundsman.readings.store.Partitions;
import org.roundsman.rules.DryRun;
import org.roundsman.rules.RuleBook;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RulesFixture;
import org.roundsman.rules.TriedAlarm;
import org.roundsman.rules.fold.DeviceFold;
import org.roundsman.rules.fold.Memory;
import org.roundsman.rules.fold.Tuning;
import org.roundsman.rules.store.DeviceTable;
import org.roundsman.rules.store.MemoryTable;
import org.roundsman.timeline.PastEvents;

/** Trying other values over what is stored. */
class TryerDbTest {

    private final RulesFixture fixture = new RulesFixture("tries");
    private final Tryer tryer = new Tryer(
            new DeviceTable(fixture.database),
            new MemoryTable(fixture.database),
            new PastReadings(fixture.database),
            new PastEvents(fixture.database),
            new DeviceHistory(fixture.database, new PlannedWork(fixture.database, Clock.systemUTC())));
    private final long accessPoint = fixture.desk.accessPoint("ap-1");

    @BeforeEach
    void sight() {
        tryer.alarms(new PastAlarms(fixture.database));
    }

    private DryRun.Result run(AlarmType type, RuleSet tried, Instant from, Instant to) {
        RuleBook.Wish wish = new RuleBook.Wish(type, RuleLevel.ALL, 0, Map.of(), "");
        DryRun run = new DryRun(
                1,
                CustomerScope.everyone(),
                wish,
                "",
                0,
                from,
                to,
                DryRun.State.RUNNING,
                0,
                0,
                "wren",
                from,
                "",
                Optional.empty());
        return tryer.run(
                run,
                RuleSet.shipped(),
                tried,
                tryer.devices(CustomerScope.everyone(), RuleLevel.ALL, 0),
                count -> {},
                () -> false);
    }

    /** Random readings: figures that wander, lost rounds, missing figures, pauses, radios that go off, set-up networks. */
    private static final class Wandering {
        private final Random random;
        private double level = 50;
        private int off;
        private int silent;
        private boolean setup;

        Wandering(long seed) {
            random = new Random(seed);
        }

        List<Reading> minutes(long device, Instant from, int count) {
            List<Reading> readings = new ArrayList<>();
            Instant at = from;
            for (int i = 0; i < count; i++) {
                at = at.plusSeconds(random.nextInt(60) == 0 ? 400 : 60);
                move();
                readings.add(silent > 0 ? Reading.empty(device, at, Outcome.NO_REPLY, 60) : answered(device, at));
            }
            return readings;
        }

        private void move() {
            level = Math.max(0, Math.min(100, level + random.nextGaussian() * 4));
            off = off > 0 ? off - 1 : random.nextInt(150) == 0 ? 6 : 0;
            silent = silent > 0 ? silent - 1 : random.nextInt(70) == 0 ? random.nextInt(6) : 0;
            setup ^= random.nextInt(90) == 0;
        }

        private Reading answered(long device, Instant at) {
            Values.Builder values = Values.builder(Subject.DEVICE)
                    .set(Metric.PORT_SPEED, level > 80 ? 100 : 1000)
                    .set(Metric.CLOCK_OFFSET, (level - 50) * 10);
            if (random.nextInt(10) > 0) {
                values.set(Metric.CPU, level).set(Metric.MEMORY, level).set(Metric.PORT_ERRORS, level / 50);
            }
            List<RadioReading> radios = new ArrayList<>(List.of(radio(1)));
            if (off == 0) {
                radios.add(radio(2));
            }
            List<NetworkReading> networks = new ArrayList<>(List.of(network("Staff")));
            if (setup) {
                networks.add(network("Set-Up 7"));
            }
            return new Reading(device, at, Outcome.ANSWERED, 60, values.build(), radios, networks, Optional.empty());
        }

        private RadioReading radio(int number) {
            return new RadioReading(
                    number,
                    Values.builder(Subject.RADIO)
                            .set(Metric.CHANNEL, 36)
                            .set(Metric.NOISE, -90)
                            .set(Metric.RADIO_CLIENTS, Math.round(level))
                            .set(Metric.UTILISATION, random.nextInt(12) == 0 ? Double.NaN : level)
                            .set(Metric.RETRIES, level / 2)
                            .build());
        }

        private static NetworkReading network(String ssid) {
            return new NetworkReading(
                    ssid,
                    Values.builder(Subject.NETWORK)
                            .set(Metric.NETWORK_CLIENTS, 1)
                            .build());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void theSameReadingsLeadToTheSameAlarmsLiveAndInATry(long seed) {
        Instant from = Instant.parse("2026-11-20T00:00:00Z");
        List<Reading> readings = new Wandering(seed).minutes(accessPoint, from, 1_500);
        fixture.store(readings);
        fixture.desk.fleet.run("update device set interval_s = 60");
        Instant to = from.plus(Duration.ofDays(2));
        Map<AlarmType, List<Signal>> live = new EnumMap<>(AlarmType.class);
        DeviceTable.Watched device = new DeviceTable(fixture.database).all().get(accessPoint);
        DeviceFold fold =
                new DeviceFold(accessPoint, new Tuning.Book(RuleSet.shipped()).of(device.target()), Memory.none());
        List<Signal> out = new ArrayList<>();
        readings.forEach(reading -> fold.take(reading, out));
        out.forEach(signal -> live.computeIfAbsent(signal.key().type(), type -> new ArrayList<>())
                .add(signal));
        int alarms = 0;
        for (AlarmType type : List.of(
                AlarmType.CPU_HIGH,
                AlarmType.UTILISATION_HIGH,
                AlarmType.CLIENTS_HIGH,
                AlarmType.RADIO_OFF,
                AlarmType.PORT_SLOW,
                AlarmType.CLOCK_OFF,
                AlarmType.SETUP_NETWORK_OPEN,
                AlarmType.FLAPPING,
                AlarmType.PORT_ERRORS)) {
            Episodes expected = new Episodes(from);
            expected.take(live.getOrDefault(type, List.of()), device);
            expected.close(device);
            DryRun.Result result = run(type, RuleSet.shipped(), from, to);
            assertThat(result.current()).as(type.id()).isEqualTo(expected.tally());
            assertThat(result.tried()).isEqualTo(result.current());
            alarms += result.current().count();
        }
        assertThat(alarms).as("something happened").isGreaterThan(3);
    }

    /** Four weeks, of which the last three days are kept as single readings; busy from 10 to 11 on each day but Sundays. */
    @Test
    void fourWeeksWithABusyRadioExplainAChangedThreshold() throws java.sql.SQLException {
        Instant to = Instant.parse("2026-11-26T00:00:00Z");
        Instant raw = to.minus(Duration.ofDays(3));
        Instant from = to.minus(Duration.ofDays(28));
        busyMorningsInQuarters(from, raw);
        fixture.store(RulesFixture.minutes(accessPoint, raw, 3 * 1440, i -> {
            int ofDay = i % 1440;
            return ofDay >= 600 && ofDay < 660 ? 90 : 10;
        }));
        DryRun.Result result = run(
                AlarmType.UTILISATION_HIGH,
                RulesFixture.with(
                        AlarmType.UTILISATION_HIGH,
                        Map.of(RuleField.WARNING, "91", RuleField.MINOR, "95", RuleField.MAJOR, "99")),
                from,
                to);
        assertThat(result.current().count()).as("24 of 28 days are no Sundays").isEqualTo(24);
        assertThat(result.current().bySeverity()).isEqualTo(Map.of(Severity.MAJOR, 24));
        assertThat(result.tried().count()).isZero();
        TriedAlarm last = result.current().alarms().get(0);
        assertThat(last.began()).isEqualTo(Instant.parse("2026-11-25T10:00:00Z"));
        assertThat(last.raised()).isEqualTo(Instant.parse("2026-11-25T10:15:00Z"));
        assertThat(last.ended()).contains(Instant.parse("2026-11-25T11:15:00Z"));
        assertThat(last.why()).contains("90");
        TriedAlarm first = result.current().alarms().get(23);
        assertThat(first.began()).as("from quarter hours").isEqualTo(Instant.parse("2026-10-29T10:00:00Z"));
        assertThat(first.raised()).isEqualTo(Instant.parse("2026-10-29T10:15:00Z"));
        assertThat(result.basis()).anyMatch(text -> text.contains("23 Nov 2026, 00:00 UTC"));
        assertThat(result.basis()).anyMatch(text -> text.contains("steps of 15 minutes"));
    }

    private void busyMorningsInQuarters(Instant from, Instant raw) throws java.sql.SQLException {
        new Partitions(fixture.database).forQuarters(List.of(from.minus(Duration.ofDays(1)), raw));
        for (String table : List.of(
                "quarter_device (device_id, at, cpu_n, cpu_mean)",
                "quarter_radio (device_id, number, at, utilisation_n, utilisation_mean)")) {
            boolean radio = table.startsWith("quarter_radio");
            fixture.desk.fleet.run(
                    "insert into " + table + " select ?, " + (radio ? "2, " : "")
                            + "q, 15, case when extract(hour from q at time zone 'UTC') = 10 and extract(isodow from q"
                            + " at time zone 'UTC') < 7 then 90 else 10 end from generate_series(?::timestamptz,"
                            + " ?::timestamptz - interval '15 min', interval '15 min') q",
                    accessPoint,
                    from.minus(Duration.ofDays(1)).atOffset(java.time.ZoneOffset.UTC),
                    raw.atOffset(java.time.ZoneOffset.UTC));
        }
    }

    @Test
    void eventsAreCountedInTheirTime() {
        Instant from = Instant.parse("2026-11-20T00:00:00Z");
        for (int minute : new int[] {0, 10, 20, 300, 400}) {
            fixture.desk.fleet.run(
                    "insert into device_event (device_id, at, kind, title) values (?, ?, 'RESTARTED', 'Restarted')",
                    accessPoint,
                    from.plus(Duration.ofMinutes(minute)).atOffset(java.time.ZoneOffset.UTC));
        }
        DryRun.Result result = run(
                AlarmType.DEVICE_RESTARTED,
                RulesFixture.with(AlarmType.DEVICE_RESTARTED, Map.of(RuleField.WINDOW, "7200")),
                from,
                from.plus(Duration.ofDays(1)));
        assertThat(result.current().count()).isEqualTo(3);
        assertThat(result.tried().count()).as("two hours: the last two are one").isEqualTo(2);
        TriedAlarm first = result.current().alarms().get(2);
        assertThat(first.highest()).isEqualTo(Severity.MINOR);
        assertThat(first.began()).isEqualTo(from);
        assertThat(first.ended()).contains(from.plus(Duration.ofMinutes(80)));
    }

    @Test
    void fallsFromBeforeTheFirstReadingAreKnownFromTheSpans() {
        Instant from = Instant.parse("2026-11-20T00:00:00Z");
        Instant raw = from.plus(Duration.ofDays(1));
        fixture.store(RulesFixture.minutes(accessPoint, raw, 60, i -> 10));
        for (int minute : new int[] {60, 80, 100}) {
            Instant at = from.plus(Duration.ofMinutes(minute));
            fixture.desk.fleet.run(
                    "insert into span (device_id, from_at, to_at, condition) values (?, ?, ?, 2)",
                    accessPoint,
                    at.atOffset(java.time.ZoneOffset.UTC),
                    at.plusSeconds(300).atOffset(java.time.ZoneOffset.UTC));
        }
        DryRun.Result result = run(AlarmType.FLAPPING, RuleSet.shipped(), from, raw.plus(Duration.ofHours(1)));
        assertThat(result.current().count()).isEqualTo(1);
        assertThat(result.current().alarms().get(0).highest()).isEqualTo(Severity.MINOR);
        assertThat(result.basis()).anyMatch(text -> text.contains("from the spans"));
    }
}
