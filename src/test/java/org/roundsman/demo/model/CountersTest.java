package org.roundsman.demo.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Faults;
import org.roundsman.demo.SetClock;

/** A counter is the integral of its gains since the restart; the sum is formed here anew, from the definition. */
class CountersTest {

    private static final DemoFleet FLEET = DemoFleet.of(250, 3);
    private static final long BASE = 1_795_600_000_000L;
    private static final long WEEK = 7 * 86_400_000L;

    private final SetClock clock = new SetClock("2026-11-25T10:00:00Z");

    @Property(tries = 60)
    void countsAreTheIntegralsOfTheGains(
            @ForAll @IntRange(max = 249) int device, @ForAll @LongRange(max = WEEK) long offset) {
        DemoDevice asked = FLEET.devices().get(device);
        Faults faults = new Faults(FLEET, clock);
        long at = BASE + offset;
        Outlook outlook = new Outlook();
        faults.look(asked, at, outlook);
        Counters counters = new Counters(new Usage(FLEET, asked), asked, faults);
        counters.move(at, outlook.restart);
        for (int place = 0; place < Counters.frames(asked.radios().size()); place++) {
            assertThat(counters.count(place)).isEqualTo(integral(asked, faults, place, outlook.restart, at));
        }
    }

    private static long integral(DemoDevice device, Faults faults, int place, long from, long to) {
        Usage usage = new Usage(FLEET, device);
        long[] gains = new long[Counters.frames(device.radios().size())];
        BigInteger sum = BigInteger.ZERO;
        for (long quarter = from / 900_000; quarter * 900_000 < to; quarter++) {
            long begin = Math.max(from, quarter * 900_000);
            long end = Math.min(to, (quarter + 1) * 900_000);
            usage.gains(quarter, faults.bits(device, begin), gains);
            sum = sum.add(BigInteger.valueOf(gains[place]).multiply(BigInteger.valueOf(end - begin)));
        }
        long scale = place == Counters.OCTETS_IN || place == Counters.OCTETS_OUT ? 1000 : 1_000_000;
        return sum.divide(BigInteger.valueOf(scale)).longValueExact();
    }

    @Property(tries = 40)
    void countsNeverFallBetweenRestartsAndDoNotDependOnHowOftenTheyAreRead(
            @ForAll @IntRange(max = 249) int device,
            @ForAll @Size(min = 1, max = 40) List<@LongRange(min = 1, max = 3_000_000) Long> steps) {
        DemoDevice asked = FLEET.devices().get(device);
        Faults faults = new Faults(FLEET, clock);
        Counters often = new Counters(new Usage(FLEET, asked), asked, faults);
        Outlook outlook = new Outlook();
        long at = BASE;
        faults.look(asked, at, outlook);
        long restart = outlook.restart;
        often.move(at, restart);
        long before = often.count(Counters.OCTETS_IN);
        for (long step : steps) {
            at += step;
            often.move(at, restart);
            assertThat(often.count(Counters.OCTETS_IN)).isGreaterThanOrEqualTo(before);
            before = often.count(Counters.OCTETS_IN);
        }
        Counters once = new Counters(new Usage(FLEET, asked), asked, faults);
        once.move(at, restart);
        for (int place = 0; place < Counters.frames(asked.radios().size()); place++) {
            assertThat(often.count(place)).isEqualTo(once.count(place));
        }
    }

    @Property(tries = 20)
    void aRadioThatIsSwitchedOffByHandStopsCountingAtThatMoment(
            @ForAll @LongRange(min = 1000, max = 880_000) long off,
            @ForAll @LongRange(min = 1, max = 5) long quarters) {
        DemoDevice device = FLEET.devices().stream()
                .filter(d -> d.isAccessPoint() && d.standing().isEmpty())
                .findFirst()
                .orElseThrow();
        Faults faults = new Faults(FLEET, clock);
        long restart = BASE / 900_000 * 900_000;
        Counters counters = new Counters(new Usage(FLEET, device), device, faults);
        clock.set(java.time.Instant.ofEpochMilli(restart + off));
        counters.move(restart + off, restart);
        long delivered = counters.count(Counters.frames(0));
        faults.switchOn(Fault.RADIO_OFF, device);
        counters.move(restart + off + quarters * 900_000, restart);
        assertThat(counters.count(Counters.frames(0))).isEqualTo(delivered);
        clock.set(java.time.Instant.ofEpochMilli(restart + off + quarters * 900_000));
        faults.switchOff(Fault.RADIO_OFF, device);
        counters.move(restart + off + (quarters + 2) * 900_000, restart);
        assertThat(counters.count(Counters.frames(0))).isGreaterThan(delivered);
    }
}
