package org.roundsman.triage.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.measure.Outcome;

/** The watch over stored readings, with a clock that is put forward. Rounds once a minute; a pass every two seconds. */
class WatchDbTest {

    private static final Duration QUIET = Duration.ofMinutes(2);

    private static World world;

    private long site;
    private long gateway;
    private long bridge;
    private long[] points;
    private long[] all;
    private AlarmKey uplink;

    @BeforeAll
    static void open() {
        world = MillLane.world("watch");
    }

    /** A site of its own for each test; those of the others answer, so that it is not we who are blind. */
    @BeforeEach
    void site() {
        MillLane lane = MillLane.in(world);
        site = lane.site();
        gateway = lane.gateway();
        bridge = lane.bridge();
        points = lane.points();
        all = lane.all();
        uplink = lane.uplink();
        world.run(QUIET);
    }

    @AfterEach
    void allIsWell() {
        world.wellAgain();
    }

    private AlarmKey silence(long device) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(device));
    }

    @Test
    void healthyDevicesRaiseNothing() {
        assertThat(world.book.active()).isEmpty();
    }

    @Test
    void aLostUplinkIsOneCauseWithinThreeIntervalsAndFiveSeconds() {
        Instant fault = world.now();
        world.silent(all);
        world.run(Duration.ofMinutes(5));
        assertThat(world.causes()).hasSize(1);
        OpenAlarm cause = world.causes().get(0);
        assertThat(cause.key()).isEqualTo(uplink);
        assertThat(cause.severity()).isEqualTo(Severity.CRITICAL);
        assertThat(cause.settled()).isTrue();
        assertThat(cause.cause()).isEqualTo(CauseKind.UPLINK_LOST);
        assertThat(cause.evidence()).anyMatch(said -> said.startsWith("6 of 6 access points silent since "));
        assertThat(cause.impact().devices()).isEqualTo(6);
        assertThat(Duration.between(fault, cause.raised())).isLessThanOrEqualTo(Duration.ofSeconds(3 * 60 + 5));
        assertThat(cause.pointing()).isEqualTo(all.length);
        for (long device : all) {
            OpenAlarm alarm = world.silence(device).orElseThrow();
            assertThat(alarm.causedBy()).hasValue(cause.id());
            assertThat(Duration.between(fault, alarm.raised())).isLessThanOrEqualTo(Duration.ofSeconds(3 * 60 + 5));
        }
    }

    @Test
    void neverDuringTheLossWasThereASecondCause() {
        world.silent(all);
        for (int i = 0; i < 30; i++) {
            world.run(Duration.ofSeconds(10));
            assertThat(world.causes()).hasSizeLessThanOrEqualTo(1);
        }
    }

    @Test
    void whenTheUplinkReturnsAllClearsAndTheCauseSumsUp() {
        long before = world.changes();
        world.silent(all);
        world.run(Duration.ofMinutes(12));
        long raised = world.changes() - before;
        world.answers(gateway);
        world.run(Duration.ofMinutes(1));
        world.answers(all);
        world.run(Duration.ofMinutes(2));
        assertThat(world.book.active()).isEmpty();
        assertThat(world.changes() - before)
                .as("one raise and one clear of each")
                .isEqualTo(2 * raised);
        assertThat(world.summary(uplink))
                .matches("Back after 1[23] min; 6 access points; gateway gw-1 kept running, so it was the line\\.");
    }

    @Test
    void whoIsSilentStillWhenTheUplinkReturnsPointsToItUntilItHadTimeToStart() {
        world.silent(all);
        world.run(Duration.ofMinutes(10));
        world.answers(Arrays.stream(all).filter(id -> id != points[0]).toArray());
        world.run(Duration.ofMinutes(3));
        assertThat(world.alarm(uplink)).isEmpty();
        assertThat(world.causes()).isEmpty();
        assertThat(world.silence(points[0]).orElseThrow().settled()).isFalse();
        assertThat(world.askedSoon).contains(points[0]);
        world.run(Duration.ofMinutes(4));
        assertThat(world.causes()).hasSize(1);
        assertThat(world.causes().get(0).key()).isEqualTo(silence(points[0]));
        assertThat(world.causes().get(0).settled()).isTrue();
    }

    @Test
    void aRestartOfTheServiceInMidOutageNeitherRepeatsNorLoses() {
        world.silent(all);
        world.run(Duration.ofMinutes(6));
        long before = world.changes();
        long episodes = world.desk.fleet.count("alarm_episode");
        world.restartService();
        world.run(Duration.ofMinutes(6));
        assertThat(world.changes()).isEqualTo(before);
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(uplink);
        world.answers(all);
        world.run(Duration.ofMinutes(2));
        assertThat(world.book.active()).isEmpty();
        assertThat(world.desk.fleet.count("alarm_episode")).isEqualTo(episodes);
    }

    @Test
    void ourOwnDowntimeNeitherRaisesNorClears() {
        world.silent(points[0]);
        world.run(Duration.ofMinutes(6));
        long before = world.changes();
        world.rest(Duration.ofHours(3));
        world.restartService();
        world.pass();
        assertThat(world.changes()).isEqualTo(before);
        assertThat(world.silence(points[0])).isPresent();
        world.run(Duration.ofMinutes(6));
        assertThat(world.changes()).isEqualTo(before);
        assertThat(world.silence(points[0]).orElseThrow().evidence().get(0))
                .startsWith("Access point ap-1 last answered at ");
    }

    @Test
    void whenOurOwnRoundsStandStillItIsNobodyElsesAlarm() {
        world.stall(Duration.ofMinutes(2));
        world.stall(Duration.ofMinutes(2));
        assertThat(world.causes()).hasSize(1);
        assertThat(world.causes().get(0).key()).isEqualTo(Sight.VIEW);
        assertThat(world.book.active()).hasSize(1);
        world.run(Duration.ofMinutes(2));
        assertThat(world.book.active()).isEmpty();
    }

    @Test
    void aSwitchThatComesBackWithAYoungUptimeHadNoPower() {
        world.silent(
                LongStream.concat(LongStream.of(bridge), Arrays.stream(points)).toArray());
        world.run(Duration.ofMinutes(2));
        assertThat(world.portsRead).contains(gateway);
        world.portRead(gateway, 3, 2);
        world.run(Duration.ofMinutes(3));
        OpenAlarm cause = world.causes().get(0);
        assertThat(world.causes()).hasSize(1);
        assertThat(cause.key()).isEqualTo(silence(bridge));
        assertThat(cause.severity()).isEqualTo(Severity.CRITICAL);
        assertThat(cause.cause()).isEqualTo(CauseKind.SWITCH_POWER);
        world.restarts(bridge);
        world.restarts(points);
        world.run(Duration.ofMinutes(2));
        assertThat(world.book.active()).isEmpty();
        assertThat(world.summary(silence(bridge)))
                .startsWith("Back after")
                .endsWith("switch sw-2 restarted meanwhile, so it had lost its power or was started again.");
        assertThat(world.summary(silence(points[0]))).contains("it restarted meanwhile, up since ");
    }

    @Test
    void aPortReadAfterTheSilenceRefinesTheVerdict() {
        world.silent(points[0]);
        world.run(Duration.ofMinutes(3));
        assertThat(world.silence(points[0]).orElseThrow().cause()).isEqualTo(CauseKind.DEVICE_LOST);
        assertThat(world.portsRead).contains(bridge);
        world.portRead(bridge, 1, 2);
        world.run(Duration.ofSeconds(10));
        OpenAlarm alarm = world.silence(points[0]).orElseThrow();
        assertThat(alarm.cause()).isEqualTo(CauseKind.LINK_DOWN);
        assertThat(alarm.evidence()).contains("So it has no power, or its cable is out.");
        assertThat(alarm.severity()).isEqualTo(Severity.MAJOR);
    }

    @Test
    void aPortThatWorksAgainStaysTheCauseUntilTheDeviceAnswers() {
        world.silent(points[0]);
        world.run(Duration.ofMinutes(3));
        world.portRead(bridge, 1, 2);
        world.run(Duration.ofSeconds(10));
        world.portRead(bridge, 1, 1);
        world.run(Duration.ofSeconds(10));
        OpenAlarm alarm = world.silence(points[0]).orElseThrow();
        assertThat(alarm.cause()).isEqualTo(CauseKind.LINK_DOWN);
        assertThat(alarm.evidence())
                .contains("So it has no power, or its cable is out.")
                .endsWith("The port works again since; an answer is still missing.");
        world.answers(points[0]);
        world.run(Duration.ofMinutes(1));
        assertThat(world.silence(points[0])).isEmpty();
    }

    @Test
    void aPausedDeviceClearsWithAWordAboutIt() {
        world.silent(points[0]);
        world.run(Duration.ofMinutes(4));
        world.desk.fleet.run("update device set paused = true where id = ?", points[0]);
        world.pass();
        assertThat(world.book.active()).isEmpty();
        assertThat(world.summary(silence(points[0]))).isEqualTo("The device was paused: nobody asks it any more.");
    }

    @Test
    void refusedCredentialsHaveAnAlarmOfTheirOwn() {
        AlarmKey refused = AlarmKey.of(AlarmType.CREDENTIALS_REFUSED, Resource.device(points[1]));
        world.all(Outcome.WRONG_DIGEST, points[1]);
        world.run(Duration.ofMinutes(1));
        OpenAlarm alarm = world.alarm(refused).orElseThrow();
        assertThat(alarm.cause()).isEqualTo(CauseKind.CREDENTIALS_REFUSED);
        assertThat(alarm.severity()).isEqualTo(Severity.MINOR);
        assertThat(alarm.text()).isEqualTo("It answers, but rejects us: wrong authentication password or protocol.");
        world.answers(points[1]);
        world.run(Duration.ofMinutes(1));
        assertThat(world.book.active()).isEmpty();
        assertThat(world.summary(refused)).isEqualTo("The credentials are accepted again.");
    }

    @Test
    void whenEverySiteFallsSilentWeAreBlindAndNothingIsSaidOfDevices() {
        long third = world.desk.fleet.site(world.desk.customer, "Quay Street", "Europe/London");
        long lone = world.device(third, "ap-z", "ACCESS_POINT");
        world.run(QUIET);
        long[] everything = world.desk.fleet.ids("select id from device").stream()
                .mapToLong(Long::longValue)
                .toArray();
        world.silent(everything);
        world.run(Duration.ofMinutes(8));
        assertThat(world.book.active().keySet()).containsExactly(Sight.VIEW);
        assertThat(world.causes().get(0).cause()).isEqualTo(CauseKind.VIEW_LOST);
        world.answers(everything);
        world.silent(lone);
        world.run(Duration.ofMinutes(2));
        assertThat(world.book.active()).isEmpty();
        assertThat(world.summary(Sight.VIEW)).startsWith("We see again after");
        world.run(Duration.ofMinutes(5));
        assertThat(world.causes()).extracting(OpenAlarm::key).containsExactly(silence(lone));
    }

    @Test
    void plannedWorkIsFlaggedAndTakenBack() {
        world.silent(points[0]);
        world.run(Duration.ofMinutes(4));
        assertThat(world.silence(points[0]).orElseThrow().planned()).isFalse();
        world.desk.fleet.run(
                "insert into planned_work (reach, customer_id, site_id, title, kind, from_at, to_at, made_by, made_at,"
                        + " over_at) values ('SITE', ?, ?, 'Cabling', 'ONCE', ?, ?, 'wren', now(), ?)",
                world.desk.customer,
                site,
                world.now().atOffset(java.time.ZoneOffset.UTC),
                world.now().plusSeconds(120).atOffset(java.time.ZoneOffset.UTC),
                world.now().plusSeconds(120).atOffset(java.time.ZoneOffset.UTC));
        world.run(Duration.ofSeconds(20));
        assertThat(world.silence(points[0]).orElseThrow().planned()).isTrue();
        world.run(Duration.ofSeconds(120));
        assertThat(world.silence(points[0]).orElseThrow().planned()).isFalse();
    }

    @Test
    void restartsThatBelongToARestartedSwitchPointToIt() {
        AlarmKey first = AlarmKey.of(AlarmType.DEVICE_RESTARTED, Resource.device(bridge));
        AlarmKey second = AlarmKey.of(AlarmType.DEVICE_RESTARTED, Resource.device(points[2]));
        world.desk.desk.accept(List.of(restarted(first), restarted(second)));
        world.pass(Set.of());
        OpenAlarm cause = world.alarm(first).orElseThrow();
        OpenAlarm other = world.alarm(second).orElseThrow();
        assertThat(cause.cause()).isEqualTo(CauseKind.RESTARTED);
        assertThat(cause.settled())
                .as("its gateway may turn out to have restarted as well")
                .isFalse();
        assertThat(other.causedBy()).hasValue(cause.id());
        assertThat(other.evidence()).containsExactly("sw-2, below which it hangs, restarted at about the same time.");
        world.run(Duration.ofSeconds(80));
        assertThat(world.alarm(first).orElseThrow().settled()).isTrue();
    }

    private Signal restarted(AlarmKey key) {
        return new Signal.Raise(key, Severity.WARNING, world.now(), world.now(), "Restarted once.");
    }

    @Test
    void anAlarmThatSaysItAllIsSettledWithItsImpact() {
        AlarmKey busy = AlarmKey.of(AlarmType.UTILISATION_HIGH, Resource.radio(points[0], 1));
        world.desk.desk.accept(List.of(new Signal.Raise(busy, Severity.MINOR, world.now(), world.now(), "72 % busy.")));
        world.pass(Set.of());
        OpenAlarm alarm = world.alarm(busy).orElseThrow();
        assertThat(alarm.cause()).isEqualTo(CauseKind.ITSELF);
        assertThat(alarm.settled()).isTrue();
        assertThat(alarm.impact().devices()).isEqualTo(1);
    }

    @Test
    void aQuietPassWritesNothing() {
        world.silent(all);
        world.run(Duration.ofMinutes(6));
        long told = world.told.size();
        world.run(Duration.ofMinutes(2));
        assertThat(world.told).hasSize((int) told);
    }
}
