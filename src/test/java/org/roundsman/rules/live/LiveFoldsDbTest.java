package org.roundsman.rules.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.measure.Reading;
import org.roundsman.readings.PastReadings;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RulesFixture;
import org.roundsman.rules.store.DeviceTable;
import org.roundsman.rules.store.MemoryTable;
import org.roundsman.timeline.PastEvents;

/** The live rules with real tables behind them; signals go to the desk of alarms. */
class LiveFoldsDbTest {

    private static final Instant START = Instant.parse("2026-11-25T06:00:00Z");

    private final RulesFixture fixture = new RulesFixture("live_rules");
    private final long accessPoint = fixture.desk.accessPoint("ap-1");
    private final List<Signal> out = new ArrayList<>();
    private RuleSet rules = RuleSet.shipped();
    private LiveFolds folds;

    @BeforeEach
    void begin() {
        folds = fresh();
    }

    private LiveFolds fresh() {
        return new LiveFolds(
                new LiveFolds.Sources(
                        () -> rules,
                        new LiveFolds.Alarms(fixture.desk.book, new PastAlarms(fixture.database)),
                        new PastReadings(fixture.database),
                        new PastEvents(fixture.database),
                        new LiveFolds.Tables(new DeviceTable(fixture.database), new MemoryTable(fixture.database))),
                fixture.clock);
    }

    /** As the service starts: what it finds in the database is all that it knows. */
    private void restart() {
        folds = fresh();
        folds.begin(out);
    }

    private void stored(int minute, int count, double busy) {
        List<Reading> readings =
                RulesFixture.minutes(accessPoint, START.plus(Duration.ofMinutes(minute)), count, i -> busy);
        fixture.store(readings);
        fixture.clock.set(START.plus(Duration.ofMinutes(minute + count)));
        readings.forEach(reading -> folds.take(reading, out));
    }

    private int delivered() {
        int count = out.size();
        fixture.desk.desk.accept(List.copyOf(out));
        out.clear();
        return count;
    }

    private List<OpenAlarm> open() {
        return fixture.desk.book.open(CustomerScope.everyone());
    }

    @Test
    void anAlarmIsRaisedAndClearsAgain() {
        folds.begin(out);
        stored(0, 16, 90);
        assertThat(delivered()).isEqualTo(1);
        assertThat(open()).hasSize(1).first().satisfies(alarm -> {
            assertThat(alarm.severity()).isEqualTo(Severity.MAJOR);
            assertThat(alarm.key().resource().part()).isEqualTo("radio 2");
            assertThat(alarm.began()).isEqualTo(START);
            assertThat(alarm.text()).isEqualTo("Utilisation 90\u00a0%, major from 85\u00a0% on, for 15 min.");
        });
        stored(16, 16, 10);
        assertThat(delivered()).isEqualTo(1);
        assertThat(open()).isEmpty();
    }

    @Test
    void aRestartInMidDwellRaisesAtTheRightTimeAndARestartInMidAlarmRepeatsNothing() {
        folds.begin(out);
        stored(0, 10, 90);
        restart();
        stored(10, 5, 90);
        assertThat(out).isEmpty();
        stored(15, 1, 90);
        assertThat(out).hasSize(1);
        delivered();
        restart();
        stored(16, 10, 90);
        restart();
        assertThat(out).as("the restarts repeat nothing").isEmpty();
        stored(26, 16, 20);
        assertThat(delivered()).isEqualTo(1);
        assertThat(open()).isEmpty();
        restart();
        assertThat(out).isEmpty();
    }

    @Test
    void whatWasStoredWhileTheRulesWereDownIsJudgedAtTheNextStart() {
        folds.begin(out);
        stored(0, 20, 90);
        delivered();
        folds = fresh();
        fixture.store(RulesFixture.minutes(accessPoint, START.plus(Duration.ofMinutes(20)), 30, i -> 5));
        fixture.clock.set(START.plus(Duration.ofMinutes(50)));
        folds.begin(out);
        assertThat(out).hasSize(1).first().isInstanceOf(Signal.Clear.class);
        assertThat(out.get(0).at()).isEqualTo(START.plus(Duration.ofMinutes(35)));
    }

    @Test
    void anOpenAlarmIsClearedLongAfterItsReadingsWereForgotten() {
        folds.begin(out);
        stored(0, 20, 90);
        delivered();
        fixture.clock.set(START.plus(Duration.ofDays(3)));
        restart();
        assertThat(out).as("nobody has been looking: that is no evidence").isEmpty();
        stored(3 * 24 * 60, 16, 5);
        assertThat(out).hasSize(1).first().isInstanceOf(Signal.Clear.class);
    }

    @Test
    void readingsThatDidNotFitAreGoneThroughAgainAndLeadToTheSame() throws InterruptedException {
        folds.begin(out);
        Inbox inbox = new Inbox(60);
        List<Reading> all = new ArrayList<>();
        long other = fixture.desk.accessPoint("ap-2");
        folds.refresh(out);
        for (int i = 0; i < 40; i++) {
            double busy = i < 20 ? 90 : 10;
            List<Reading> batch = List.of(
                    ReadingsFixture.answered(accessPoint, START.plus(Duration.ofMinutes(i)), 5, busy),
                    ReadingsFixture.answered(
                            other, START.plus(Duration.ofMinutes(i)).plusSeconds(20), 5, 20));
            fixture.store(batch);
            inbox.offer(batch);
            all.addAll(batch);
        }
        fixture.clock.set(START.plus(Duration.ofMinutes(40)));
        List<Signal> whole = new ArrayList<>();
        LiveFolds unhurried = fresh();
        unhurried.refresh(whole);
        all.forEach(reading -> unhurried.take(reading, whole));
        while (inbox.waiting() > 0) {
            assertThat(inbox.takeLost()).as("not before what waited is taken").isEmpty();
            inbox.next(Duration.ofMillis(1)).forEach(reading -> folds.take(reading, out));
        }
        assertThat(out).hasSize(1);
        Instant since = inbox.takeLost().orElseThrow();
        assertThat(since).isEqualTo(START.plus(Duration.ofMinutes(30)));
        folds.replay(since, out);
        assertThat(out).isEqualTo(whole).hasSize(2);
        assertThat(inbox.takeLost()).isEmpty();
    }

    @Test
    void aRemovedDeviceAndARuleSwitchedOffClearWhatIsOpenAndPausingLeavesIt() {
        folds.begin(out);
        stored(0, 20, 90);
        delivered();
        fixture.desk.fleet.run("update device set paused = true where id = ?", accessPoint);
        folds.refresh(out);
        stored(20, 30, 5);
        assertThat(out).as("nobody looks at a paused device").isEmpty();
        fixture.desk.fleet.run("update device set paused = false where id = ?", accessPoint);
        rules = RulesFixture.with(AlarmType.UTILISATION_HIGH, Map.of(RuleField.ENABLED, "no"));
        folds.refresh(out);
        assertThat(out).hasSize(1);
        assertThat(out.get(0).text()).isEqualTo("The rule is switched off.");
        delivered();
        rules = RuleSet.shipped();
        folds.refresh(out);
        stored(50, 20, 90);
        assertThat(delivered()).isEqualTo(1);
        fixture.desk.fleet.run("delete from device where id = ?", accessPoint);
        folds.refresh(out);
        assertThat(out).hasSize(1).first().isInstanceOf(Signal.Clear.class);
    }

    @Test
    void restartsAndChangesOnTheTimelineAreCountedAndClearAfterACalmHour() {
        folds.begin(out);
        fixture.clock.set(START.plus(Duration.ofMinutes(1)));
        event("RESTARTED", "Restarted", START);
        event("FACT_CHANGED", "Firmware changed", START);
        event("FACT_CHANGED", "Location changed", START);
        folds.events(out);
        assertThat(out)
                .extracting(signal -> signal.key().type())
                .containsExactlyInAnyOrder(AlarmType.DEVICE_RESTARTED, AlarmType.CONFIGURATION_CHANGED);
        assertThat(out.get(1).text()).contains("Firmware changed: 1 → 2.");
        delivered();
        restart();
        folds.events(out);
        assertThat(out).isEmpty();
        fixture.clock.set(START.plus(Duration.ofMinutes(59)));
        folds.events(out);
        assertThat(out).isEmpty();
        fixture.clock.set(START.plus(Duration.ofMinutes(60)));
        folds.events(out);
        assertThat(out).hasSize(2).allMatch(Signal.Clear.class::isInstance);
    }

    private void event(String kind, String title, Instant at) {
        fixture.desk.fleet.run(
                "insert into device_event (device_id, at, kind, title, old_value, new_value) values (?, ?, ?, ?, '1',"
                        + " '2')",
                accessPoint,
                at.atOffset(java.time.ZoneOffset.UTC),
                kind,
                title);
    }

    @Test
    void theFastestSpeedAndTheRadiosAreRememberedForEver() {
        folds.begin(out);
        stored(0, 3, 10);
        folds.save();
        assertThat(new MemoryTable(fixture.database).all().get(accessPoint).radios())
                .containsOnlyKeys(1, 2);
    }
}
