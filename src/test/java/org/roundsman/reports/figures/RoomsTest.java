package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Outage.Cause;
import org.roundsman.reports.RadioFigures;
import org.roundsman.reports.Room;
import org.roundsman.reports.Room.Reason;
import org.roundsman.reports.figures.Outages.Found;

/** Bounds: 70 % or ten hours busy, three times or four hours away by itself (common practice, no source). */
class RoomsTest {

    private final SitePeriod site =
            SampleSite.month("Europe/Berlin", "2026-06").points(4).site();
    private final List<RadioFigures> radios = new ArrayList<>();
    private final List<Found> outages = new ArrayList<>();

    private void radio(long device, double utilisation, int busyMinutes) {
        radios.add(new RadioFigures(
                site.siteId(),
                site.site(),
                device,
                "ap-" + device,
                "room " + device,
                1,
                OptionalDouble.of(5),
                utilisation < 0 ? OptionalDouble.empty() : OptionalDouble.of(utilisation),
                OptionalDouble.empty(),
                Duration.ofMinutes(busyMinutes),
                2_880,
                2_880,
                OptionalDouble.empty()));
    }

    private void outage(Cause cause, int minutes, Long... devices) {
        Instant from = site.from().plus(Duration.ofDays(outages.size()));
        Duration silence = Duration.ofMinutes(minutes);
        outages.add(new Found(
                new Outage(
                        site.siteId(),
                        site.site(),
                        site.zone(),
                        cause,
                        "it",
                        from,
                        from.plus(silence),
                        false,
                        false,
                        devices.length,
                        false,
                        silence,
                        1,
                        OptionalInt.empty(),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        false,
                        OptionalLong.empty()),
                Set.of(devices)));
    }

    private List<Room> rooms() {
        return Rooms.of(List.of(site), radios, outages);
    }

    @Test
    void aBusyChannelIsTenHoursOrSeventyPercent() {
        radio(1, 69.9, 585);
        radio(2, 40, 600);
        radio(3, 70, 300);
        radio(4, -1, 0);
        assertThat(rooms()).extracting(Room::deviceId).as("the longest first").containsExactly(2L, 3L);
        assertThat(rooms().get(1).figure()).hasValue(70);
        assertThat(rooms()).extracting(Room::reason).containsOnly(Reason.BUSY_CHANNEL);
    }

    @Test
    void threeTimesAwayByItselfIsOften() {
        outage(Cause.DEVICE, 5, 1L);
        outage(Cause.NOT_WORKED_OUT, 5, 1L);
        outage(Cause.UPLINK, 5, 1L);
        outage(Cause.DEVICE, 5, 1L, 2L);
        assertThat(rooms()).isEmpty();
        outage(Cause.COMES_AND_GOES, 6, 1L);
        assertThat(rooms()).hasSize(1);
        assertThat(rooms().get(0).reason()).isEqualTo(Reason.OFTEN_AWAY);
        assertThat(rooms().get(0).times()).isEqualTo(3);
        assertThat(rooms().get(0).time()).isEqualTo(Duration.ofMinutes(16));
        assertThat(rooms().get(0).place()).isEqualTo("room 1");
    }

    @Test
    void fourHoursAwayByItselfIsLong() {
        outage(Cause.PORT_POWER, 120, 1L);
        outage(Cause.PORT_POWER, 119, 1L);
        outage(Cause.PORT_POWER, 240, 2L);
        outage(Cause.SWITCH, 600, 3L);
        assertThat(rooms()).extracting(Room::deviceId).containsExactly(2L);
        assertThat(rooms().get(0).reason()).isEqualTo(Reason.LONG_AWAY);
    }
}
