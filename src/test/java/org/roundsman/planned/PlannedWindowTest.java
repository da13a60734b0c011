package org.roundsman.planned;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.roundsman.planned.PlannedWindow.Course;
import org.roundsman.planned.PlannedWindow.Ended;
import org.roundsman.planned.PlannedWindow.State;
import org.roundsman.planned.PlannedWindow.Stop;

/** What counts of a window, and how it stands. */
class PlannedWindowTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final ZoneId NEW_YORK = ZoneId.of("America/New_York");
    private static final Instant NOON = Instant.parse("2026-06-01T10:00:00Z");

    /** 12:00 to 14:00 in Berlin. */
    private static final Timing ONCE = new Timing.Once(new Stretch(NOON, hours(2)));

    private static final Timing DAILY = Timing.Repeating.of(
            new Repetition.Daily(),
            LocalTime.NOON,
            Duration.ofHours(2),
            LocalDate.parse("2026-06-01"),
            null,
            List.of());

    private static Instant hours(double hours) {
        return NOON.plusSeconds((long) (hours * 3600));
    }

    private static PlannedWindow window(Timing timing, Course course) {
        return window(target(Reach.SITE, BERLIN), timing, course);
    }

    private static PlannedWindow window(Target target, Timing timing, Course course) {
        return new PlannedWindow(7, target, "Work on site", "", timing, "wren", NOON, course);
    }

    private static Target target(Reach reach, ZoneId... zones) {
        return new Target(
                reach,
                1,
                "Saltmarsh Ferry Line",
                reach == Reach.CUSTOMER ? OptionalLong.empty() : OptionalLong.of(11),
                reach == Reach.CUSTOMER ? "" : "Pier 1",
                reach == Reach.DEVICE ? OptionalLong.of(111) : OptionalLong.empty(),
                reach == Reach.DEVICE ? "AP mast" : "",
                List.of(zones));
    }

    private static Course course(Instant from, Instant until, Stop stop, Ended... ends) {
        return new Course(
                Optional.ofNullable(from),
                Optional.ofNullable(until),
                Optional.ofNullable(stop),
                "",
                Optional.empty(),
                List.of(ends));
    }

    private static final Course PLAIN = course(null, null, null);

    @Test
    void workThatEndsEarlyCountsUntilThen() {
        PlannedWindow ended = window(ONCE, course(null, null, null, new Ended(hours(0.5), "wren")));
        assertThat(ended.stretches(BERLIN, hours(-9), hours(9))).containsExactly(new Stretch(NOON, hours(0.5)));
        assertThat(ended.state(hours(0.4))).isEqualTo(State.RUNNING);
        assertThat(ended.state(hours(0.5))).isEqualTo(State.OVER);
        assertThat(ended.over()).contains(hours(0.5));
    }

    @Test
    void anEndTouchesOnlyWhatWasGoingOn() {
        PlannedWindow ended =
                window(DAILY, course(null, null, null, new Ended(hours(25), "wren"), new Ended(hours(40), "wren")));
        assertThat(ended.stretches(BERLIN, hours(-9), hours(60)))
                .containsExactly(
                        new Stretch(NOON, hours(2)),
                        new Stretch(hours(24), hours(25)),
                        new Stretch(hours(48), hours(50)));
        assertThat(ended.state(hours(26))).isEqualTo(State.REPEATING);
    }

    /** What is over stands among the past at once, and not only when its last day has gone by. */
    @Test
    void aRepetitionIsOverWithItsLastTime() {
        Timing week = Timing.Repeating.of(
                new Repetition.Daily(),
                LocalTime.NOON,
                Duration.ofHours(2),
                LocalDate.parse("2026-06-01"),
                LocalDate.parse("2026-06-02"),
                List.of());
        assertThat(window(week, PLAIN).over()).contains(hours(26));
        PlannedWindow ended = window(week, course(null, null, null, new Ended(hours(25), "wren")));
        assertThat(ended.over()).contains(hours(25));
        assertThat(ended.state(hours(25))).isEqualTo(State.OVER);
        assertThat(window(week, course(null, hours(1), Stop.CANCELLED)).over()).contains(hours(1));
        assertThat(window(DAILY, PLAIN).over()).isEmpty();
    }

    @Test
    void whatIsCalledOffCountsUntilThen() {
        PlannedWindow cancelled = window(DAILY, course(null, hours(25), Stop.CANCELLED));
        assertThat(cancelled.stretches(BERLIN, hours(-9), hours(99)))
                .containsExactly(new Stretch(NOON, hours(2)), new Stretch(hours(24), hours(25)));
        assertThat(cancelled.state(hours(26))).isEqualTo(State.CANCELLED);
        assertThat(cancelled.next(hours(26))).isEmpty();
        PlannedWindow before = window(ONCE, course(null, hours(-1), Stop.CANCELLED));
        assertThat(before.stretches(BERLIN, hours(-9), hours(9))).isEmpty();
        assertThat(before.over()).contains(hours(-1));
    }

    @Test
    void aRepetitionDoesNotReachIntoThePast() {
        PlannedWindow entered = window(DAILY, course(hours(25), null, null));
        assertThat(entered.stretches(BERLIN, hours(-9), hours(50)))
                .containsExactly(new Stretch(hours(25), hours(26)), new Stretch(hours(48), hours(50)));
    }

    @Test
    void statesFollowTheTime() {
        assertThat(window(ONCE, PLAIN).state(hours(-1))).isEqualTo(State.COMING);
        assertThat(window(ONCE, PLAIN).state(hours(0))).isEqualTo(State.RUNNING);
        assertThat(window(ONCE, PLAIN).state(hours(2))).isEqualTo(State.OVER);
        assertThat(window(DAILY, PLAIN).state(hours(1))).isEqualTo(State.RUNNING);
        assertThat(window(DAILY, PLAIN).state(hours(3))).isEqualTo(State.REPEATING);
    }

    /** Noon in New York is six hours after noon in Berlin. */
    @Test
    void allSitesOfACustomerFollowTheirOwnClocks() {
        PlannedWindow all = window(target(Reach.CUSTOMER, BERLIN, NEW_YORK), DAILY, PLAIN);
        assertThat(all.running(BERLIN, hours(1))).isPresent();
        assertThat(all.running(NEW_YORK, hours(1))).isEmpty();
        assertThat(all.running(NEW_YORK, hours(7))).contains(new Stretch(hours(6), hours(8)));
        assertThat(all.state(hours(7))).isEqualTo(State.RUNNING);
        assertThat(all.next(hours(3))).contains(new Stretch(hours(6), hours(8)));
    }

    @Test
    void theSnapshotTellsSitesAndDevicesApart() {
        PlannedWindow device = window(target(Reach.DEVICE, BERLIN), ONCE, PLAIN);
        PlannedNow now = new PlannedNow(
                NOON,
                Map.of(11L, new PlannedNow.Spot(1, BERLIN), 12L, new PlannedNow.Spot(1, BERLIN)),
                List.of(device));
        assertThat(now.covers(11, OptionalLong.of(111), hours(1))).isTrue();
        assertThat(now.covers(11, OptionalLong.of(112), hours(1))).isFalse();
        assertThat(now.covers(11, OptionalLong.empty(), hours(1))).isFalse();
        assertThat(now.covers(11, OptionalLong.of(111), hours(2))).isFalse();
        assertThat(now.covers(99, OptionalLong.of(111), hours(1))).isFalse();
        PlannedNow whole = new PlannedNow(
                NOON,
                Map.of(11L, new PlannedNow.Spot(1, BERLIN), 12L, new PlannedNow.Spot(2, BERLIN)),
                List.of(window(target(Reach.CUSTOMER, BERLIN), ONCE, PLAIN)));
        assertThat(whole.covers(11, OptionalLong.of(112), hours(1))).isTrue();
        assertThat(whole.sitesCovered(List.of(11L, 12L), hours(1))).containsOnlyKeys(11L);
    }
}
