package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.reports.Handling;
import org.roundsman.reports.ReportSubject;

/** Tells how the alarms of a stretch were dealt with, up to the moment of the report. An alarm belongs to when it was raised. */
public final class Dealings {

    private final Instant asOf;
    private final List<PastEpisode> raised;
    private final Map<Long, PastEpisode> known;

    private Dealings(ReportSubject subject, Instant asOf, List<PastEpisode> episodes) {
        Bounds bounds = new Bounds(subject, asOf);
        this.asOf = asOf;
        this.raised = episodes.stream()
                .filter(episode -> bounds.covers(episode.raised(), episode.zone()))
                .toList();
        this.known = episodes.stream().collect(Collectors.toMap(PastEpisode::id, episode -> episode));
    }

    /**
     * @param episodes of the customer, at least those that began in the stretch or reached into it
     */
    public static Handling of(ReportSubject subject, Instant asOf, List<PastEpisode> episodes) {
        return new Dealings(subject, asOf, episodes).handling();
    }

    private Handling handling() {
        List<PastEpisode> counted = raised.stream()
                .filter(episode -> episode.explainedBy().isEmpty() && !episode.planned())
                .toList();
        Set<Long> roots = counted.stream().map(PastEpisode::id).collect(Collectors.toSet());
        List<Duration> toTake = times(counted, PastEpisode::taken);
        List<Duration> toClear = times(counted, PastEpisode::cleared);
        return new Handling(
                counted.size(),
                severities(counted),
                (int) raised.stream()
                        .filter(episode -> episode.explainedBy().isPresent() && roots.contains(root(episode)))
                        .count(),
                (int) raised.stream()
                        .filter(episode -> episode.explainedBy().isEmpty() && episode.planned())
                        .count(),
                toTake.size(),
                toClear.size(),
                median(toTake),
                median(toClear),
                toClear.isEmpty() ? Optional.empty() : Optional.of(toClear.get(toClear.size() - 1)));
    }

    private static SortedMap<String, Integer> severities(List<PastEpisode> counted) {
        SortedMap<String, Integer> severities = new TreeMap<>();
        counted.forEach(episode -> severities.merge(episode.highest().name(), 1, Integer::sum));
        return severities;
    }

    /** Id of the last of the chain that is known. */
    private long root(PastEpisode episode) {
        PastEpisode at = episode;
        Set<Long> seen = new HashSet<>();
        while (at.explainedBy().isPresent() && seen.add(at.id())) {
            PastEpisode next = known.get(at.explainedBy().getAsLong());
            if (next == null) {
                return 0;
            }
            at = next;
        }
        return at.id();
    }

    /** From the raise until then, ascending; what came after the moment of the report had not come yet. */
    private List<Duration> times(List<PastEpisode> counted, Function<PastEpisode, Optional<Instant>> moment) {
        return counted.stream()
                .flatMap(episode -> moment
                        .apply(episode)
                        .filter(at -> !at.isAfter(asOf))
                        .map(at -> Duration.between(episode.raised(), at))
                        .stream())
                .sorted()
                .toList();
    }

    /** Of an even number the mean of the middle two. */
    private static Optional<Duration> median(List<Duration> sorted) {
        if (sorted.isEmpty()) {
            return Optional.empty();
        }
        Duration upper = sorted.get(sorted.size() / 2);
        Duration lower = sorted.get((sorted.size() - 1) / 2);
        return Optional.of(lower.plus(upper).dividedBy(2));
    }
}
