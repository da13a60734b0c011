package org.roundsman.demo.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.SetClock;

class ScheduleTest {

    private static final DemoFleet FLEET = DemoFleet.of(260, DemoFleet.USUAL_SEED);
    private static final long FROM = Instant.parse("2026-08-26T00:00:00Z").toEpochMilli();
    private static final long HOUR = 3_600_000;
    private static final long MINUTE = 60_000;

    private final Faults faults = new Faults(FLEET, new SetClock("2026-11-25T10:00:00Z"));

    /** Two views of one schedule: minute by minute, and as stretches. */
    @Property(tries = 300)
    void silencesAreExactlyTheMinutesInWhichADeviceIsSilent(
            @ForAll @IntRange(max = 299) int device, @ForAll @IntRange(max = 91 * 24) int hour) {
        DemoDevice asked = FLEET.devices().get(device);
        long from = FROM + hour * HOUR;
        long to = from + HOUR;
        List<Stretch> silences = faults.silences(asked, from, to);
        Outlook outlook = new Outlook();
        for (long at = from; at < to; at += MINUTE) {
            long moment = at;
            faults.look(asked, moment, outlook);
            assertThat(outlook.restart).isLessThanOrEqualTo(moment);
            assertThat(outlook.silent).isEqualTo(silences.stream().anyMatch(s -> s.holds(moment)));
        }
    }

    @Property(tries = 200)
    void theLastRestartNeverGoesBack(
            @ForAll @IntRange(max = 299) int device, @ForAll @IntRange(max = 91 * 24) int hour) {
        DemoDevice asked = FLEET.devices().get(device);
        Outlook outlook = new Outlook();
        long before = Long.MIN_VALUE;
        for (long at = FROM + hour * HOUR; at < FROM + (hour + 6) * HOUR; at += 30_000) {
            faults.look(asked, at, outlook);
            assertThat(outlook.restart).isGreaterThanOrEqualTo(before);
            // a restart that was not reported at its own time is a restart that came too late
            assertThat(outlook.restart == before || at - outlook.restart < 30_000 || before == Long.MIN_VALUE)
                    .isTrue();
            before = outlook.restart;
        }
    }

    @Test
    void atAnyTimeSomePortIsDeadAndSomeRoomSaturated() {
        for (int hour = 0; hour < 91 * 24; hour += 7) {
            long at = FROM + hour * HOUR;
            assertThat(count(Fault.PORT_DEAD, at)).isEqualTo(1);
            assertThat(count(Fault.ROOM_SATURATED, at)).isBetween(1L, 3L);
        }
    }

    @Test
    void everySixHoursOneSiteLosesItsLineForHalfAnHourOrMore() {
        for (int window = 0; window < 91 * 4; window += 5) {
            long from = FROM + window * 6 * HOUR;
            long sites = FLEET.sites().stream()
                    .filter(site -> minutesLost(site.devices().get(0), from) >= 25)
                    .count();
            assertThat(sites).isEqualTo(1);
        }
    }

    @Test
    void updatesNetworksRadarAndFansComeAndGoEachDay() {
        for (Fault fault : List.of(Fault.FIRMWARE_UPDATED, Fault.NETWORK_ADDED, Fault.RADAR_SEEN, Fault.FAN_FAILED)) {
            for (int day = 0; day < 60; day += 13) {
                int begun = 0;
                int ended = 0;
                boolean before = count(fault, FROM + day * 24 * HOUR) > 0;
                for (long at = FROM + day * 24 * HOUR; at < FROM + (day + 2) * 24 * HOUR; at += 10 * MINUTE) {
                    boolean now = count(fault, at) > 0;
                    begun += now && !before ? 1 : 0;
                    ended += before && !now ? 1 : 0;
                    before = now;
                }
                // radar is the most frequent: to four access points in each of eight windows
                assertThat(begun).as(fault + " on day " + day).isBetween(1, 32);
                assertThat(ended).as(fault + " on day " + day).isBetween(1, 32);
            }
        }
    }

    private long minutesLost(DemoDevice device, long from) {
        long minutes = 0;
        for (long at = from; at < from + 6 * HOUR; at += MINUTE) {
            minutes += Fault.UPLINK_LOST.in(faults.bits(device, at)) ? 1 : 0;
        }
        return minutes;
    }

    private long count(Fault fault, long at) {
        return FLEET.devices().stream()
                .filter(d -> fault.in(faults.bits(d, at)))
                .count();
    }

    @Test
    void theFlappingAccessPointIsDownSeveralTimesADay() {
        DemoDevice flapping = FLEET.devices().stream()
                .filter(d -> d.standing().contains(Fault.FLAPPING))
                .findFirst()
                .orElseThrow();
        assertThat(faults.silences(flapping, FROM, FROM + 24 * HOUR)).hasSizeBetween(20, 35);
    }
}
