package org.roundsman.reports.figures;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.roundsman.readings.PastCrowds.Quarter;
import org.roundsman.readings.Percentiles;
import org.roundsman.reports.Crowd.Busiest;
import org.roundsman.reports.Crowd.Split;

/**
 * Clients in the hours of a clock that have figures. An hour counts as the mean of its quarter hours with figures. Where the
 * clock is put back an hour comes twice, and each of the two counts by itself.
 *
 * @param hours by their begin; not rounded
 */
record CrowdHours(ZoneId zone, SortedMap<Instant, Split> hours) {

    private static final int HOURS_A_DAY = 24;
    private static final int HOURS_A_WEEK = 168;

    static CrowdHours of(Collection<Quarter> quarters, ZoneId zone) {
        SortedMap<Instant, List<Quarter>> byHour = new TreeMap<>();
        quarters.forEach(quarter -> byHour.computeIfAbsent(begin(quarter.at(), zone), made -> new ArrayList<>(4))
                .add(quarter));
        SortedMap<Instant, Split> hours = new TreeMap<>();
        byHour.forEach((at, own) -> hours.put(
                at,
                new Split(
                        average(own, Quarter::clients),
                        average(own, Quarter::staff),
                        average(own, Quarter::guest),
                        average(own, Quarter::other))));
        return new CrowdHours(zone, hours);
    }

    private static Instant begin(Instant at, ZoneId zone) {
        return at.atZone(zone).truncatedTo(ChronoUnit.HOURS).toInstant();
    }

    /** Adds up hour by hour; a site without a figure adds nothing to an hour in which another has one. */
    static CrowdHours together(ZoneId zone, List<CrowdHours> sites) {
        SortedMap<Instant, Split> sums = new TreeMap<>();
        sites.forEach(site -> site.hours().forEach((at, split) -> sums.merge(at, split, CrowdHours::plus)));
        return new CrowdHours(zone, sums);
    }

    private static Split plus(Split one, Split other) {
        return new Split(
                one.all() + other.all(),
                one.staff() + other.staff(),
                one.guest() + other.guest(),
                one.other() + other.other());
    }

    /** Mean over the hours. */
    Optional<Split> mean() {
        return meanOf(hours.values());
    }

    /** The hour with the most, of several the first; alike is what is so to four decimals. */
    Optional<Busiest> busiest() {
        Instant found = null;
        double most = 0;
        for (Map.Entry<Instant, Split> hour : hours.entrySet()) {
            double clients = Rounding.of(hour.getValue().all());
            if (found == null || clients > most) {
                found = hour.getKey();
                most = clients;
            }
        }
        return Optional.ofNullable(found).map(at -> new Busiest(at, zone, rounded(hours.get(at))));
    }

    /** By hour of the clock, the median over the days; a day on which the hour came twice counts with the mean of the two. */
    List<OptionalDouble> typicalDay() {
        List<SortedMap<LocalDate, List<Split>>> clock = new ArrayList<>();
        IntStream.range(0, HOURS_A_DAY).forEach(hour -> clock.add(new TreeMap<>()));
        hours.forEach((at, split) -> {
            ZonedDateTime local = at.atZone(zone);
            clock.get(local.getHour())
                    .computeIfAbsent(local.toLocalDate(), made -> new ArrayList<>(1))
                    .add(split);
        });
        return clock.stream().map(days -> median(days.values())).toList();
    }

    private static OptionalDouble median(Collection<List<Split>> days) {
        double[] means =
                days.stream().mapToDouble(day -> average(day, Split::all)).toArray();
        return means.length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(Rounding.of(Percentiles.type7(means, 0.5)));
    }

    /** By hour of the week from Monday 0:00 on, the mean over all such hours. */
    List<Optional<Split>> week() {
        List<List<Split>> cells = new ArrayList<>();
        IntStream.range(0, HOURS_A_WEEK).forEach(hour -> cells.add(new ArrayList<>(5)));
        hours.forEach((at, split) -> {
            ZonedDateTime local = at.atZone(zone);
            int day = local.getDayOfWeek().getValue() - 1;
            cells.get(day * HOURS_A_DAY + local.getHour()).add(split);
        });
        return cells.stream().map(CrowdHours::meanOf).toList();
    }

    private static Optional<Split> meanOf(Collection<Split> splits) {
        return splits.isEmpty()
                ? Optional.empty()
                : Optional.of(rounded(new Split(
                        average(splits, Split::all),
                        average(splits, Split::staff),
                        average(splits, Split::guest),
                        average(splits, Split::other))));
    }

    /** @param figures at least one */
    private static <T> double average(Collection<T> figures, ToDoubleFunction<T> figure) {
        return figures.stream().mapToDouble(figure).average().orElseThrow();
    }

    private static Split rounded(Split split) {
        return new Split(
                Rounding.of(split.all()),
                Rounding.of(split.staff()),
                Rounding.of(split.guest()),
                Rounding.of(split.other()));
    }
}
