package org.roundsman.demo.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.Fault;
import org.roundsman.demo.SiteKind;

/** The figures are made up; what is tested is that they can be figures of a network. */
class UsageTest {

    private static final DemoFleet FLEET = DemoFleet.of(260, DemoFleet.USUAL_SEED);
    private static final long FROM = Instant.parse("2026-08-26T00:00:00Z").toEpochMilli();

    @Property
    void figuresStayInTheirRanges(
            @ForAll @IntRange(max = 299) int number,
            @ForAll @IntRange(max = 91 * 1440) int minute,
            @ForAll @IntRange(max = 511) int faults) {
        DemoDevice device = FLEET.devices().get(number);
        Figures figures = new Figures(device.radios().size());
        new Usage(FLEET, device).show(FROM + minute * 60_000L, faults, figures);
        assertThat(figures.cpu).isBetween(0, 100);
        assertThat(figures.memory).isBetween(0, 100);
        for (int radio = 0; radio < figures.on.length; radio++) {
            assertThat(figures.clients[radio]).isBetween(0, 2007);
            assertThat(figures.guests[radio]).isBetween(0, figures.clients[radio]);
            assertThat(figures.utilisation[radio]).isBetween(0, 255);
            assertThat(figures.noise[radio]).isBetween(-110, figures.on[radio] ? -80 : 0);
        }
    }

    @Property(tries = 200)
    void noMoreFramesAreRetriedThanDelivered(
            @ForAll @IntRange(max = 299) int number, @ForAll @IntRange(max = 8735) int quarter) {
        DemoDevice device = FLEET.devices().get(number);
        long[] gains = new long[Counters.frames(device.radios().size())];
        new Usage(FLEET, device).gains(FROM / Counters.QUARTER_MILLIS + quarter, 0, gains);
        for (int radio = 0; radio < device.radios().size(); radio++) {
            assertThat(gains[Counters.retried(radio)]).isBetween(0L, gains[Counters.frames(radio)]);
        }
        // 1 Gb/s is 125,000,000 octets/s: nothing runs faster than its port
        assertThat(gains[Counters.OCTETS_IN]).isBetween(0L, 125_000_000L);
        assertThat(gains[Counters.OCTETS_OUT]).isBetween(0L, 125_000_000L);
    }

    @Test
    void peopleComeByLocalTimeOnBothSidesOfAChangeOfClocks() {
        DemoSite office = FLEET.sites().stream()
                .filter(s -> s.kind() == SiteKind.SCHOOL && s.zone().equals(ZoneId.of("Europe/Berlin")))
                .findFirst()
                .orElseThrow();
        // the clocks went back on Sunday, 2026-10-25; lessons run at 10:00 on the Friday before and the Monday after
        for (String day : new String[] {"2026-10-23", "2026-10-26"}) {
            assertThat(clients(office, day + "T10:00")).isGreaterThan(10 * (1 + clients(office, day + "T22:00")));
            assertThat(clients(office, day + "T05:00")).isZero();
        }
        assertThat(clients(office, "2026-10-25T10:00")).isZero();
    }

    private static int clients(DemoSite site, String local) {
        long at = LocalDateTime.parse(local).atZone(site.zone()).toInstant().toEpochMilli();
        int sum = 0;
        for (DemoDevice device : site.devices()) {
            Figures figures = new Figures(device.radios().size());
            new Usage(FLEET, device).show(at, 0, figures);
            sum += figures.allClients();
        }
        return sum;
    }

    @Test
    void aSaturatedRoomIsBusierThan85Percent() {
        DemoDevice device = FLEET.devices().stream()
                .filter(DemoDevice::isAccessPoint)
                .findFirst()
                .orElseThrow();
        Figures figures = new Figures(device.radios().size());
        for (int minute = 0; minute < 1440; minute++) {
            new Usage(FLEET, device).show(FROM + minute * 60_000L, Fault.ROOM_SATURATED.bit(), figures);
            assertThat(java.util.Arrays.stream(figures.utilisation).max().orElseThrow() / 2.55)
                    .isGreaterThan(85);
        }
    }

    @Test
    void aRadioThatIsOffHasNobody() {
        DemoDevice device = FLEET.devices().stream()
                .filter(DemoDevice::isAccessPoint)
                .findFirst()
                .orElseThrow();
        Figures figures = new Figures(device.radios().size());
        new Usage(FLEET, device).show(FROM, Fault.RADIO_OFF.bit(), figures);
        assertThat(figures.on[0]).isFalse();
        assertThat(figures.clients[0]).isZero();
        assertThat(figures.on[1]).isTrue();
    }
}
