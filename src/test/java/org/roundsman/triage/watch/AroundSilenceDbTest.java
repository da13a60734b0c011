package org.roundsman.triage.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.readings.store.Partitions;

/** What rules tell of a device that is silent, or was so just before, with a clock that is put forward. */
class AroundSilenceDbTest {

    private static World world;

    private long gateway;
    private long bridge;
    private long[] points;
    private long[] all;
    private AlarmKey uplink;

    @BeforeAll
    static void open() {
        world = MillLane.world("around_silence");
    }

    /** A site of its own for each test; those of the others answer, so that it is not we who are blind. */
    @BeforeEach
    void site() {
        MillLane lane = MillLane.in(world);
        gateway = lane.gateway();
        bridge = lane.bridge();
        points = lane.points();
        all = lane.all();
        uplink = lane.uplink();
        world.run(Duration.ofMinutes(2));
    }

    @AfterEach
    void allIsWell() {
        world.wellAgain();
    }

    private AlarmKey silence(long device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
    }

    private AlarmKey restart(long device) {
        return AlarmKey.of(AlarmType.DEVICE_RESTARTED, Resource.device(device));
    }

    /** A rule raises it now, of a restart at an earlier time. */
    private OpenAlarm restarted(long device, Instant began) {
        world.desk.desk.accept(
                List.of(new Signal.Raise(restart(device), Severity.WARNING, began, world.now(), "Restarted once.")));
        world.pass(Set.of());
        return world.alarm(restart(device)).orElseThrow();
    }

    @Test
    void aRestartWithinASilenceThatIsOverPointsToItAlsoAfterARestartOfTheService() {
        world.silent(points[0]);
        world.run(Duration.ofMinutes(6));
        long cause = world.silence(points[0]).orElseThrow().id();
        world.restarts(points[0]);
        Instant booted = world.now();
        world.run(Duration.ofMinutes(1));
        assertThat(world.silence(points[0])).isEmpty();
        world.restartService();
        OpenAlarm alarm = restarted(points[0], booted);
        assertThat(alarm.causedBy()).hasValue(cause);
        assertThat(alarm.settled()).isTrue();
        assertThat(alarm.evidence()).containsExactly("It was silent until it restarted: see that alarm.");
        assertThat(world.causes()).isEmpty();
        world.run(Duration.ofMinutes(12));
        assertThat(world.alarm(restart(points[0])).orElseThrow().causedBy())
                .as("when the silence is over for long")
                .hasValue(cause);
    }

    @Test
    void aRestartThatBeganAfterTheSilenceWasOverIsACauseOfItsOwn() {
        world.silent(points[0]);
        world.run(Duration.ofMinutes(6));
        world.answers(points[0]);
        world.run(Duration.ofMinutes(3));
        assertThat(world.silence(points[0])).isEmpty();
        OpenAlarm alarm = restarted(points[0], world.now().minusSeconds(30));
        assertThat(alarm.causedBy()).isEmpty();
        world.run(Duration.ofSeconds(80));
        assertThat(world.alarm(restart(points[0])).orElseThrow().settled()).isTrue();
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(restart(points[0]));
    }

    @Test
    void aRestartBelowALostSwitchPointsToItWithOrWithoutASilenceOfItsOwn() {
        world.desk.fleet.run("update device set paused = true where id = ?", points[5]);
        world.pass();
        world.silent(all);
        world.answers(gateway);
        world.run(Duration.ofMinutes(4));
        assertThat(world.silence(points[5])).as("nobody looks at it").isEmpty();
        long cause = world.silence(bridge).orElseThrow().id();
        assertThat(world.silence(points[0]).orElseThrow().causedBy()).hasValue(cause);
        world.restarts(bridge);
        world.restarts(Arrays.copyOf(points, 5));
        Instant booted = world.now();
        world.run(Duration.ofMinutes(1));
        assertThat(world.book.active()).isEmpty();
        world.restarts(points[5]);
        world.run(Duration.ofMinutes(1));
        world.desk.fleet.run("update device set paused = false where id = ?", points[5]);
        world.restartService();
        assertThat(restarted(points[0], booted).causedBy()).hasValue(cause);
        OpenAlarm other = restarted(points[5], booted.plusSeconds(60));
        assertThat(other.causedBy()).hasValue(cause);
        assertThat(other.evidence())
                .containsExactly(
                        "It restarted while sw-2, below which it hangs, was silent, or just after: see that alarm.");
    }

    /** A rule tells now that the first radio of the first access point is busy. */
    private AlarmKey busy() {
        AlarmKey busy = AlarmKey.of(AlarmType.UTILISATION_HIGH, Resource.radio(points[0], 1));
        world.desk.desk.accept(List.of(new Signal.Raise(busy, Severity.MINOR, world.now(), world.now(), "72 % busy.")));
        world.pass(Set.of());
        return busy;
    }

    @Test
    void aFigureOfASilentDeviceIsExplainedByItsSilenceUntilItAnswers() {
        AlarmKey busy = busy();
        assertThat(world.alarm(busy).orElseThrow().causedBy()).isEmpty();
        world.silent(points[0]);
        world.run(Duration.ofMinutes(5));
        OpenAlarm silence = world.silence(points[0]).orElseThrow();
        OpenAlarm old = world.alarm(busy).orElseThrow();
        assertThat(old.causedBy()).hasValue(silence.id());
        assertThat(old.settled()).isTrue();
        assertThat(old.evidence()).singleElement().satisfies(said -> assertThat(said)
                .startsWith("Last seen at ")
                .endsWith("; silent since: nothing newer is known."));
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(silence(points[0]));
        world.answers(points[0]);
        world.run(Duration.ofMinutes(2));
        OpenAlarm again = world.alarm(busy).orElseThrow();
        assertThat(again.causedBy()).isEmpty();
        assertThat(again.evidence()).isEmpty();
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(busy);
    }

    @Test
    void aFigureOfADeviceThatIsLostWithItsSitePointsToTheSitesAlarm() {
        AlarmKey busy = busy();
        world.silent(all);
        world.run(Duration.ofMinutes(5));
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(uplink);
        assertThat(world.alarm(busy).orElseThrow().causedBy())
                .hasValue(world.alarm(uplink).orElseThrow().id());
    }

    @Test
    void anAlarmOfOneRadioIsAboutThePeopleOfThatRadio() throws SQLException {
        Instant weekBefore = world.now().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofDays(7));
        new Partitions(world.desk.database).forQuarters(List.of(weekBefore));
        world.desk.fleet.run(
                "insert into quarter_device (device_id, at, clients_n, clients_mean) values (?, ?, 15, 100)",
                points[0],
                weekBefore.atOffset(ZoneOffset.UTC));
        for (int radio = 1; radio <= 2; radio++) {
            world.desk.fleet.run(
                    "insert into quarter_radio (device_id, number, at, clients_n, clients_mean) values (?, ?, ?, 15, ?)",
                    points[0],
                    radio,
                    weekBefore.atOffset(ZoneOffset.UTC),
                    radio == 1 ? 20 : 80);
        }
        assertThat(world.alarm(busy()).orElseThrow().impact().clients()).hasValue(20);
    }
}
