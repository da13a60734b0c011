package org.roundsman.triage.impact;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;
import org.roundsman.alarms.Impact;
import org.roundsman.planned.Stretch;
import org.roundsman.readings.PastClients.Quarter;
import org.roundsman.readings.Percentiles;
import org.roundsman.triage.HourOfWeek;

/**
 * Who is usually on each access point of a site at one hour of the week. Of each access point the mean of each past hour is
 * taken, and of these means the median; what several have is the sum of their medians. A week of which an access point has
 * no figures does not count for it. Immutable.
 */
public final class Usual {

    private static final int QUARTER = 900;

    private final Map<Long, Person> medians;

    /** Clients of one access point. */
    private record Person(double staff, double guest, double other) {}

    private Usual(Map<Long, Person> medians) {
        this.medians = medians;
    }

    /**
     * Works it out.
     *
     * @param hours the hours that count, one for each week
     * @param quarters figures of the access points in them
     * @param planned planned work, under 0 that of the whole site, under a device's id that of the device alone
     */
    public static Usual of(List<HourOfWeek.Stretch> hours, List<Quarter> quarters, Map<Long, List<Stretch>> planned) {
        Map<Long, List<Quarter>> byDevice = new HashMap<>();
        quarters.stream()
                .filter(quarter -> !touches(planned.getOrDefault(0L, List.of()), quarter.at()))
                .filter(quarter -> !touches(planned.getOrDefault(quarter.deviceId(), List.of()), quarter.at()))
                .forEach(quarter -> byDevice.computeIfAbsent(quarter.deviceId(), made -> new ArrayList<>())
                        .add(quarter));
        Map<Long, Person> medians = new HashMap<>();
        byDevice.forEach((device, own) -> medians.put(
                device,
                new Person(
                        median(hours, own, Quarter::staff),
                        median(hours, own, Quarter::guest),
                        median(hours, own, Quarter::other))));
        return new Usual(medians);
    }

    /** Whether there is a past of any access point. */
    public boolean known() {
        return !medians.isEmpty();
    }

    private static boolean touches(List<Stretch> planned, Instant quarter) {
        Instant end = quarter.plusSeconds(QUARTER);
        return planned.stream()
                .anyMatch(
                        stretch -> stretch.from().isBefore(end) && stretch.to().isAfter(quarter));
    }

    private static double median(List<HourOfWeek.Stretch> hours, List<Quarter> own, ToDoubleFunction<Quarter> figure) {
        double[] means = hours.stream()
                .map(hour -> mean(hour, own, figure))
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .toArray();
        return means.length == 0 ? 0 : Percentiles.type7(means, 0.5);
    }

    private static OptionalDouble mean(HourOfWeek.Stretch hour, List<Quarter> own, ToDoubleFunction<Quarter> figure) {
        return own.stream()
                .filter(quarter ->
                        !quarter.at().isBefore(hour.from()) && quarter.at().isBefore(hour.to()))
                .mapToDouble(figure)
                .average();
    }

    /** What these devices would have; unknown when there is no past of any of them. Devices without clients add nothing. */
    public Impact of(Collection<Long> devices, int accessPoints, boolean serviceHours) {
        List<Person> known =
                devices.stream().map(medians::get).filter(p -> p != null).toList();
        if (known.isEmpty()) {
            return Impact.unknown(accessPoints, serviceHours);
        }
        return new Impact(
                sum(known, Person::staff),
                sum(known, Person::guest),
                sum(known, Person::other),
                accessPoints,
                serviceHours);
    }

    /**
     * What one access point would have on a part of it.
     *
     * @param share of its clients, 0 to 1
     */
    public Impact ofShare(long device, double share, boolean serviceHours) {
        Person all = medians.get(device);
        if (all == null) {
            return Impact.unknown(1, serviceHours);
        }
        List<Person> part = List.of(new Person(share * all.staff(), share * all.guest(), share * all.other()));
        return new Impact(
                sum(part, Person::staff), sum(part, Person::guest), sum(part, Person::other), 1, serviceHours);
    }

    private static OptionalInt sum(List<Person> known, ToDoubleFunction<Person> figure) {
        return OptionalInt.of(
                (int) Math.round(known.stream().mapToDouble(figure).sum()));
    }

    /** All clients of these devices together; empty when there is no past of any of them. */
    public OptionalDouble clients(Collection<Long> devices) {
        List<Person> known =
                devices.stream().map(medians::get).filter(p -> p != null).toList();
        return known.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(known.stream()
                        .mapToDouble(p -> p.staff() + p.guest() + p.other())
                        .sum());
    }
}
