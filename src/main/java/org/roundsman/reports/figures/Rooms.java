package org.roundsman.reports.figures;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Outage.Cause;
import org.roundsman.reports.RadioFigures;
import org.roundsman.reports.Room;
import org.roundsman.reports.Room.Reason;
import org.roundsman.reports.figures.Outages.Found;
import org.roundsman.reports.figures.SitePeriod.Point;

/** Finds the rooms that need attention. The bounds are common practice, without a source. */
public final class Rooms {

    private static final Duration BUSY_FOR = Duration.ofHours(10);
    private static final int OFTEN = 3;
    private static final Duration LONG = Duration.ofHours(4);

    /** What takes a single access point down with it is nothing of the room. */
    private static final Set<Cause> FROM_ABOVE = Set.of(Cause.UPLINK, Cause.SWITCH, Cause.SWITCH_POWER);

    /** The most time first; of those alike by site, access point and radio. */
    private static final Comparator<Room> WORST_FIRST = Comparator.comparing(Room::time)
            .reversed()
            .thenComparing(Room::site, String.CASE_INSENSITIVE_ORDER)
            .thenComparing(Room::siteId)
            .thenComparing(Room::device, String.CASE_INSENSITIVE_ORDER)
            .thenComparing(Room::deviceId)
            .thenComparing(room -> room.radio().orElse(0));

    private Rooms() {}

    public static List<Room> of(List<SitePeriod> sites, List<RadioFigures> radios, List<Found> outages) {
        List<Room> rooms = new ArrayList<>();
        radios.stream().filter(Rooms::busy).map(Rooms::busyRoom).forEach(rooms::add);
        for (SitePeriod site : sites) {
            site.points().forEach(point -> away(site, point, outages).ifPresent(rooms::add));
        }
        rooms.sort(WORST_FIRST);
        return rooms;
    }

    private static boolean busy(RadioFigures radio) {
        return radio.busy().compareTo(BUSY_FOR) >= 0 || radio.utilisation().orElse(0) >= RadioFigures.BUSY;
    }

    private static Room busyRoom(RadioFigures radio) {
        return new Room(
                radio.siteId(),
                radio.site(),
                radio.deviceId(),
                radio.device(),
                radio.place(),
                Reason.BUSY_CHANNEL,
                OptionalInt.of(radio.number()),
                radio.utilisation(),
                radio.busy(),
                0);
    }

    private static Optional<Room> away(SitePeriod site, Point point, List<Found> outages) {
        List<Outage> own = alone(point.deviceId(), outages).toList();
        int times = own.stream().mapToInt(Outage::times).sum();
        Duration time = own.stream().map(Outage::silence).reduce(Duration.ZERO, Duration::plus);
        boolean lasts = time.compareTo(LONG) >= 0;
        if (!lasts && times < OFTEN) {
            return Optional.empty();
        }
        return Optional.of(new Room(
                site.siteId(),
                site.site(),
                point.deviceId(),
                point.device(),
                point.place(),
                times >= OFTEN ? Reason.OFTEN_AWAY : Reason.LONG_AWAY,
                OptionalInt.empty(),
                OptionalDouble.empty(),
                time,
                times));
    }

    private static Stream<Outage> alone(long device, List<Found> outages) {
        return outages.stream()
                .filter(found -> found.devices().equals(Set.of(device)))
                .map(Found::outage)
                .filter(outage -> !FROM_ABOVE.contains(outage.cause()));
    }
}
