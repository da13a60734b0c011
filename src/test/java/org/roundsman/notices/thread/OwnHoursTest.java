package org.roundsman.notices.thread;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.roundsman.notices.Digest;

/** Hours and digests on local clocks; changes of the clock as in the IANA tz database: Berlin 29 March and 25 October 2026. */
class OwnHoursTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    private static Instant at(String text) {
        return Instant.parse(text);
    }

    @Test
    void noLinesMeanAroundTheClock() {
        assertThat(OwnHours.of(BERLIN, "").contain(at("2026-03-04T03:00:00Z"))).isTrue();
    }

    @Test
    void hoursFollowTheLocalClock() {
        OwnHours office = OwnHours.of(BERLIN, "Mon-Fri 08:00-18:00");
        assertThat(office.contain(at("2026-03-27T06:59:59Z")))
                .as("Friday 07:59:59 CET")
                .isFalse();
        assertThat(office.contain(at("2026-03-27T07:00:00Z"))).isTrue();
        assertThat(office.contain(at("2026-03-27T17:00:00Z"))).as("18:00 CET").isFalse();
        assertThat(office.next(at("2026-03-27T17:00:00Z")))
                .as("Monday 08:00 CEST")
                .isEqualTo(at("2026-03-30T06:00:00Z"));
    }

    @Test
    void anHourThatTheClockLeavesOutHasNoTimeInIt() {
        OwnHours night = OwnHours.of(BERLIN, "Sun 02:00-03:00");
        assertThat(night.contain(at("2026-03-29T00:30:00Z"))).isFalse();
        assertThat(night.contain(at("2026-03-29T01:30:00Z"))).isFalse();
        assertThat(night.next(at("2026-03-29T00:30:00Z"))).as("a week later").isEqualTo(at("2026-04-05T00:00:00Z"));
    }

    @Test
    void anHourThatTheClockShowsTwiceCountsTwice() {
        OwnHours night = OwnHours.of(BERLIN, "Sun 02:00-03:00");
        assertThat(night.contain(at("2026-10-25T00:30:00Z"))).as("02:30 CEST").isTrue();
        assertThat(night.contain(at("2026-10-25T01:30:00Z"))).as("02:30 CET").isTrue();
        assertThat(night.contain(at("2026-10-25T02:00:00Z"))).isFalse();
    }

    @Test
    void aStretchMayEndAtMidnight() {
        OwnHours late = OwnHours.of(BERLIN, "Sat 20:00-24:00");
        assertThat(late.contain(at("2026-03-07T22:59:59Z"))).isTrue();
        assertThat(late.contain(at("2026-03-07T23:00:00Z"))).isFalse();
    }

    @Test
    void digestsAreDueAtTheirHourOfTheLocalDay() {
        assertThat(Digest.DAILY.latestDue(at("2026-03-29T05:00:00Z"), BERLIN, 7, 1))
                .contains(at("2026-03-29T05:00:00Z"));
        assertThat(Digest.DAILY.latestDue(at("2026-03-29T04:59:59Z"), BERLIN, 7, 1))
                .contains(at("2026-03-28T06:00:00Z"));
        assertThat(Digest.DAILY.latestDue(at("2026-03-29T12:00:00Z"), BERLIN, 2, 1))
                .as("02:00 is left out: the clock jumps to 03:00")
                .contains(at("2026-03-29T01:00:00Z"));
        assertThat(Digest.WEEKLY.latestDue(at("2026-03-30T04:59:00Z"), BERLIN, 7, 1))
                .contains(at("2026-03-23T06:00:00Z"));
        assertThat(Digest.WEEKLY.latestDue(at("2026-03-30T05:00:00Z"), BERLIN, 7, 1))
                .contains(at("2026-03-30T05:00:00Z"));
        assertThat(Digest.NONE.latestDue(at("2026-03-30T05:00:00Z"), BERLIN, 7, 1))
                .isEmpty();
    }
}
