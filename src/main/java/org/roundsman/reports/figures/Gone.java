package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.planned.Stretch;

/**
 * Access points of one site that were gone together.
 *
 * @param cause the alarm behind it; empty where there is none
 * @param silences by their begin, at least one
 */
record Gone(Optional<PastEpisode> cause, List<Silence> silences) {

    /** Silence of one cause that lies no further apart is one outage. */
    static final Duration APART = Duration.ofMinutes(2);

    private static final Comparator<Silence> ORDER =
            Comparator.comparing(Silence::from).thenComparing(Silence::deviceId);

    Gone {
        silences = List.copyOf(silences);
    }

    /**
     * Groups the silence of a site: what has the same cause and lies less than two minutes apart, however far apart where the
     * cause is that something comes and goes, and what has none and shares time. By their begin.
     */
    static List<Gone> of(List<Silence> silences, Function<Silence, Optional<PastEpisode>> causes) {
        Map<Optional<PastEpisode>, List<Silence>> byCause = new HashMap<>();
        silences.forEach(silence -> byCause.computeIfAbsent(causes.apply(silence), made -> new ArrayList<>())
                .add(silence));
        List<Gone> groups = new ArrayList<>();
        byCause.forEach((cause, own) -> groups.addAll(together(cause, own)));
        groups.sort(Comparator.comparing(Gone::from)
                .thenComparing(gone -> gone.devices().iterator().next()));
        return groups;
    }

    private static List<Gone> together(Optional<PastEpisode> cause, List<Silence> own) {
        if (cause.filter(Causes::comesAndGoes).isPresent()) {
            return List.of(new Gone(cause, own.stream().sorted(ORDER).toList()));
        }
        Duration apart = cause.isPresent() ? APART : Duration.ZERO;
        List<List<Silence>> groups = new ArrayList<>();
        Instant end = Instant.MIN;
        for (Silence next : own.stream().sorted(ORDER).toList()) {
            if (groups.isEmpty() || !next.from().minus(apart).isBefore(end)) {
                groups.add(new ArrayList<>());
                end = next.to();
            }
            groups.get(groups.size() - 1).add(next);
            end = next.to().isAfter(end) ? next.to() : end;
        }
        return groups.stream().map(group -> new Gone(cause, group)).toList();
    }

    Instant from() {
        return silences.get(0).from();
    }

    Instant to() {
        return silences.stream().map(Silence::to).max(Instant::compareTo).orElseThrow();
    }

    Set<Long> devices() {
        Set<Long> devices = new TreeSet<>();
        silences.forEach(silence -> devices.add(silence.deviceId()));
        return devices;
    }

    /** How often something was silent; what overlaps or touches counts once. */
    int times() {
        return Stretch.merged(silences.stream()
                        .map(silence -> new Stretch(silence.from(), silence.to()))
                        .toList())
                .size();
    }

    Duration silence() {
        return silences.stream().map(Silence::length).reduce(Duration.ZERO, Duration::plus);
    }

    boolean goesOn() {
        return silences.stream().anyMatch(Silence::goesOn);
    }

    boolean begunBefore() {
        return silences.stream().anyMatch(Silence::begunBefore);
    }
}
