package org.roundsman.triage.impact;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.roundsman.readings.PastRadios;
import org.roundsman.readings.Percentiles;
import org.roundsman.triage.HourOfWeek;

/**
 * Which share of the clients of an access point each of its radios has at one hour of the week, by the same rule as
 * {@link Usual}: of each radio the median of the means of past hours. Of an access point whose radios have no such past, the
 * clients of the last hour tell. Shares are of what radios count; how many people there are is told by the access point, whose
 * past is without times of silence and of planned work. Immutable.
 */
public final class RadioShares {

    private static final Duration LATELY = Duration.ofHours(1);
    private static final int QUARTER = 900;

    /** Clients by access point and number of the radio. */
    private final Map<Long, Map<Integer, Double>> clients;

    private RadioShares(Map<Long, Map<Integer, Double>> clients) {
        this.clients = clients;
    }

    /**
     * Works them out for a whole site, with one question for each hour and some dozens of access points.
     *
     * @param hours the hours that count, one for each week
     * @param at now, for the radios without such a past
     */
    public static RadioShares of(
            PastRadios radios, Collection<Long> points, List<HourOfWeek.Stretch> hours, Instant at) {
        Map<Long, Map<Integer, List<Double>>> means = new HashMap<>();
        for (HourOfWeek.Stretch hour : hours) {
            each(radios, points, hour.from(), hour.to(), means);
        }
        Map<Long, Map<Integer, Double>> found = medians(means);
        found.values().removeIf(own -> sum(own) <= 0);
        List<Long> others =
                points.stream().filter(point -> !found.containsKey(point)).toList();
        if (!others.isEmpty()) {
            found.putAll(lately(radios, others, at));
        }
        return new RadioShares(found);
    }

    /** That nobody is on a radio just now does not tell that nobody usually is. */
    private static Map<Long, Map<Integer, Double>> lately(PastRadios radios, List<Long> points, Instant at) {
        Map<Long, Map<Integer, List<Double>>> means = new HashMap<>();
        Instant from = at.minus(LATELY);
        each(radios, points, from.minusSeconds(Math.floorMod(from.getEpochSecond(), QUARTER)), at, means);
        Map<Long, Map<Integer, Double>> found = medians(means);
        found.values().forEach(own -> own.values().removeIf(figure -> figure <= 0));
        found.values().removeIf(Map::isEmpty);
        return found;
    }

    private static void each(
            PastRadios radios,
            Collection<Long> points,
            Instant from,
            Instant to,
            Map<Long, Map<Integer, List<Double>>> means) {
        radios.each(points, from, to, (device, number, utilisation, figures) -> Arrays.stream(figures)
                .average()
                .ifPresent(mean -> means.computeIfAbsent(device, made -> new HashMap<>())
                        .computeIfAbsent(number, made -> new ArrayList<>())
                        .add(mean)));
    }

    private static Map<Long, Map<Integer, Double>> medians(Map<Long, Map<Integer, List<Double>>> means) {
        Map<Long, Map<Integer, Double>> medians = new HashMap<>();
        means.forEach((device, radios) -> radios.forEach((number, hours) ->
                medians.computeIfAbsent(device, made -> new HashMap<>()).put(number, median(hours))));
        return medians;
    }

    private static double median(List<Double> hours) {
        return Percentiles.type7(hours.stream().mapToDouble(Double::doubleValue).toArray(), 0.5);
    }

    private static double sum(Map<Integer, Double> radios) {
        return radios.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    /** Whether anything is known of any access point. */
    public boolean known() {
        return !clients.isEmpty();
    }

    /** The share that one radio has, 0 to 1; empty when nothing tells it. */
    public OptionalDouble of(long deviceId, int radio) {
        Map<Integer, Double> own = clients.getOrDefault(deviceId, Map.of());
        double sum = sum(own);
        return own.containsKey(radio) && sum > 0 ? OptionalDouble.of(own.get(radio) / sum) : OptionalDouble.empty();
    }
}
