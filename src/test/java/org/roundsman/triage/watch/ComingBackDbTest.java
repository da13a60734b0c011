package org.roundsman.triage.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmChange;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Episode;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.CustomerScope;

/** What the watch says of a switch or gateway while what hangs on it answers, or answers again. Rounds once a minute. */
class ComingBackDbTest {

    private static World world;

    private long gateway;
    private long bridge;
    private long[] points;

    @BeforeAll
    static void open() {
        world = MillLane.world("coming_back");
    }

    /** A site of its own for each test; those of the others answer, so that it is not we who are blind. */
    @BeforeEach
    void site() {
        MillLane lane = MillLane.in(world);
        gateway = lane.gateway();
        bridge = lane.bridge();
        points = lane.points();
        world.run(Duration.ofMinutes(2));
    }

    @AfterEach
    void allIsWell() {
        world.wellAgain();
    }

    private static AlarmKey silence(long device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
    }

    /** The switch and what hangs on it. */
    private long[] branch() {
        return LongStream.concat(LongStream.of(bridge), Arrays.stream(points)).toArray();
    }

    /** All of the branch is back; its access points were asked since, the switch was not. */
    private OpenAlarm switchIsAskedLast() {
        world.silent(branch());
        world.run(Duration.ofMinutes(5));
        assertThat(world.silence(bridge).orElseThrow().impact().devices()).isEqualTo(6);
        world.runPastRoundOf(bridge);
        world.answers(branch());
        world.run(Duration.ofSeconds(50));
        assertThat(Arrays.stream(points).filter(id -> world.silence(id).isEmpty()))
                .as("back before the switch is asked")
                .hasSizeGreaterThanOrEqualTo(5);
        return world.silence(bridge).orElseThrow();
    }

    private List<Episode.Affected> affected(OpenAlarm alarm) {
        return world.book.episodes(CustomerScope.everyone(), alarm.id()).get(0).affected();
    }

    @Test
    void whoIsBackBeforeTheSwitchCountsStillWhenItsAlarmSumsUp() {
        OpenAlarm cause = switchIsAskedLast();
        assertThat(cause.impact().devices()).isEqualTo(6);
        assertThat(affected(cause)).hasSize(6);
        assertThat(cause.evidence()).last().asString().matches("Back already of what it took down: [56] of 6\\..*");
        world.run(Duration.ofMinutes(1));
        assertThat(world.book.active()).isEmpty();
        assertThat(affected(cause)).hasSize(6);
        assertThat(world.summary(silence(bridge))).matches("Back after \\d+ min; 6 access points\\.");
    }

    @Test
    void aRestartOfTheServiceWhileThingsComeBackForgetsNobody() {
        switchIsAskedLast();
        world.restartService();
        world.pass();
        assertThat(world.silence(bridge).orElseThrow().impact().devices()).isEqualTo(6);
        world.run(Duration.ofMinutes(1));
        assertThat(world.summary(silence(bridge))).matches("Back after \\d+ min; 6 access points\\.");
    }

    /** What hangs on it is back, and it is asked in vain: it passes traffic on, and nobody but we suffers any more. */
    @Test
    void whoCameBackWithoutTheSwitchCountsNoLongerAndItsAlarmGetsMinor() {
        world.silent(branch());
        world.run(Duration.ofMinutes(5));
        assertThat(world.silence(bridge).orElseThrow().cause()).isEqualTo(CauseKind.SWITCH_LOST);
        world.answers(points);
        world.run(Duration.ofMinutes(2));
        OpenAlarm alone = world.silence(bridge).orElseThrow();
        assertThat(alone.cause()).isEqualTo(CauseKind.MANAGEMENT_LOST);
        assertThat(alone.impact().devices()).isZero();
        assertThat(affected(alone)).isEmpty();
        assertThat(world.book.changes(CustomerScope.everyone(), alone.id()))
                .extracting(AlarmChange::severity)
                .containsExactly(Optional.of(Severity.MINOR), Optional.of(Severity.CRITICAL));
        world.answers(bridge);
        world.run(Duration.ofMinutes(1));
        assertThat(world.summary(silence(bridge))).matches("Back after \\d+ min\\.");
    }

    @Test
    void aGatewayWhoseManagementAloneIsLostIsMinorFromTheStart() {
        world.silent(gateway);
        world.run(Duration.ofMinutes(5));
        OpenAlarm alarm = world.silence(gateway).orElseThrow();
        assertThat(alarm.cause()).isEqualTo(CauseKind.MANAGEMENT_LOST);
        assertThat(alarm.severity()).isEqualTo(Severity.MINOR);
        assertThat(alarm.impact().devices()).isZero();
        assertThat(alarm.advice()).isEqualTo(CauseKind.MANAGEMENT_LOST.advice());
        assertThat(world.book.changes(CustomerScope.everyone(), alarm.id())).hasSize(1);
    }
}
