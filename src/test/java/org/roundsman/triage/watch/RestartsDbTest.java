package org.roundsman.triage.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
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

/** Where one restart and many come from, with a clock that is put forward. What belongs together is common practice, no source. */
class RestartsDbTest {

    private static World world;

    private long bridge;
    private long point;

    @BeforeAll
    static void open() {
        world = MillLane.world("restarts");
    }

    /** A site of its own for each test; those of the others answer, so that it is not we who are blind. */
    @BeforeEach
    void site() {
        MillLane lane = MillLane.in(world);
        bridge = lane.bridge();
        point = lane.points()[0];
        world.run(Duration.ofMinutes(2));
    }

    @AfterEach
    void allIsWell() {
        world.wellAgain();
    }

    private static AlarmKey restart(long device) {
        return AlarmKey.of(AlarmType.DEVICE_RESTARTED, Resource.device(device));
    }

    private AlarmKey change() {
        return AlarmKey.of(AlarmType.CONFIGURATION_CHANGED, Resource.device(point));
    }

    /** A rule raises it now, or says how severe it has become. */
    private OpenAlarm raise(AlarmKey key, Severity severity, Instant began) {
        world.desk.desk.accept(List.of(new Signal.Raise(key, severity, began, world.now(), "Invented.")));
        world.pass(Set.of());
        return world.alarm(key).orElseThrow();
    }

    private OpenAlarm restarts(Severity severity) {
        return raise(restart(point), severity, world.now().minusSeconds(30));
    }

    /** It was silent, and restarted: explained by that silence. */
    private void explainedBySilence() {
        world.silent(point);
        world.run(Duration.ofMinutes(6));
        long silence = world.silence(point).orElseThrow().id();
        world.restarts(point);
        Instant booted = world.now();
        world.run(Duration.ofMinutes(1));
        assertThat(raise(restart(point), Severity.WARNING, booted).causedBy()).hasValue(silence);
        world.run(Duration.ofMinutes(15));
        assertThat(world.causes()).isEmpty();
    }

    @Test
    void anUpgradeThatRestartsItIsOneLine() {
        Instant now = world.now();
        raise(restart(point), Severity.WARNING, now.minusSeconds(90));
        OpenAlarm cause = raise(change(), Severity.WARNING, now.minusSeconds(20));
        OpenAlarm restart = world.alarm(restart(point)).orElseThrow();
        assertThat(restart.causedBy()).hasValue(cause.id());
        assertThat(restart.settled()).isTrue();
        assertThat(restart.evidence())
                .containsExactly("Its firmware or configuration changed at about the same time: see that alarm.");
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(change());
    }

    @Test
    void aChangeOfAnotherTimeDoesNotExplainIt() {
        raise(change(), Severity.WARNING, world.now());
        world.run(Duration.ofMinutes(15));
        assertThat(restarts(Severity.WARNING).causedBy()).isEmpty();
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactlyInAnyOrder(change(), restart(point));
    }

    @Test
    void threeRestartsAreMoreThanAnUpgradeBringsWithIt() {
        raise(change(), Severity.WARNING, world.now());
        assertThat(restarts(Severity.WARNING).causedBy()).isPresent();
        world.run(Duration.ofMinutes(4));
        OpenAlarm again = restarts(Severity.MINOR);
        world.run(Duration.ofMinutes(20));
        assertThat(world.alarm(again.key()).orElseThrow().causedBy()).isEmpty();
        assertThat(world.alarm(again.key()).orElseThrow().settled()).isTrue();
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactlyInAnyOrder(change(), restart(point));
    }

    @Test
    void furtherRestartsThatNoSilenceExplainsStandOnTheirOwn() {
        explainedBySilence();
        OpenAlarm again = restarts(Severity.MINOR);
        assertThat(again.causedBy()).isEmpty();
        assertThat(again.settled()).as("what it hangs on is asked first").isFalse();
        world.run(Duration.ofSeconds(80));
        assertThat(world.alarm(again.key()).orElseThrow().settled()).isTrue();
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(restart(point));
        world.restartService();
        world.pass(Set.of());
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(restart(point));
    }

    @Test
    void furtherRestartsWithinAnotherSilenceBelongToThatOne() {
        explainedBySilence();
        world.silent(point);
        world.run(Duration.ofMinutes(6));
        long second = world.silence(point).orElseThrow().id();
        world.restarts(point);
        world.run(Duration.ofMinutes(1));
        assertThat(restarts(Severity.MINOR).causedBy()).hasValue(second);
        world.run(Duration.ofMinutes(20));
        assertThat(world.alarm(restart(point)).orElseThrow().causedBy()).hasValue(second);
        world.restartService();
        world.pass(Set.of());
        assertThat(world.causes()).isEmpty();
    }

    /** As restarts leave the hour that is counted, the alarm becomes milder: that is no news. */
    @Test
    void fewerRestartsDoNotBringAnOldExplanationBack() {
        explainedBySilence();
        raise(restart(point), Severity.MINOR, world.now());
        world.run(Duration.ofMinutes(3));
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(restart(point));
        OpenAlarm milder = raise(restart(point), Severity.WARNING, world.now());
        assertThat(milder.causedBy()).isEmpty();
        assertThat(milder.settled()).isTrue();
    }

    @Test
    void restartsOfTheSwitchExplainThoseOfWhatHangsOnItEachTime() {
        raise(restart(bridge), Severity.WARNING, world.now().minusSeconds(60));
        long cause = world.alarm(restart(bridge)).orElseThrow().id();
        assertThat(restarts(Severity.WARNING).causedBy()).hasValue(cause);
        world.run(Duration.ofMinutes(20));
        assertThat(restarts(Severity.MINOR).causedBy())
                .as("of the access point alone")
                .isEmpty();
        raise(restart(bridge), Severity.MINOR, world.now().minusSeconds(60));
        assertThat(world.alarm(restart(point)).orElseThrow().causedBy()).hasValue(cause);
        world.run(Duration.ofMinutes(20));
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(restart(bridge));
    }
}
