package org.roundsman.firmware.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.roundsman.firmware.Comparison;
import org.roundsman.firmware.Comparison.Outcome;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.Release;
import org.roundsman.firmware.Release.Stand;
import org.roundsman.firmware.SecurityMinimum;
import org.roundsman.firmware.Version;
import org.roundsman.firmware.VersionScheme;

/**
 * What a line's policy says to one model: the model's own entries go before those of its line. Versions with the same text are
 * the same release, also where they cannot be compared; so are those at the same place in the order. For one thread.
 */
final class Effective {

    private final VersionScheme scheme;
    private final List<Entry> entries = new ArrayList<>();
    private final List<Minimum> minimums = new ArrayList<>();
    private final Map<String, Version> read = new HashMap<>();
    private final Map<Stand, Optional<Entry>> only = new EnumMap<>(Stand.class);

    /** A release with what its text means. */
    record Entry(Release release, Version version) {}

    private record Minimum(SecurityMinimum minimum, Version version) {}

    /** How a version stands to the security minimums. */
    record Security(List<SecurityMinimum> missing, Optional<String> cannot) {}

    Effective(LinePolicy policy, OptionalLong model) {
        this.scheme = policy.versions();
        policy.releases().stream()
                .filter(release -> holds(release.modelId(), model))
                .sorted(Comparator.comparing(release -> release.modelId().isEmpty()))
                .forEach(release -> entries.add(new Entry(release, version(release.version()))));
        Map<String, SecurityMinimum> byName = new LinkedHashMap<>();
        policy.minimums().stream()
                .filter(minimum -> holds(minimum.modelId(), model))
                .sorted(Comparator.comparing(minimum -> minimum.modelId().isEmpty()))
                .forEach(minimum -> byName.putIfAbsent(minimum.identifier().toLowerCase(Locale.ROOT), minimum));
        byName.values().forEach(minimum -> minimums.add(new Minimum(minimum, version(minimum.version()))));
    }

    private static boolean holds(OptionalLong of, OptionalLong model) {
        return of.isEmpty() || of.equals(model);
    }

    Version version(String text) {
        return read.computeIfAbsent(text, scheme::read);
    }

    /** The release of that stand, unless the model has a decision of its own about it. */
    Optional<Entry> only(Stand stand) {
        return only.computeIfAbsent(stand, wanted -> with(wanted)
                .filter(entry -> of(entry.release.version()).orElseThrow() == entry)
                .findFirst());
    }

    /** Whether a release of that stand is withdrawn for this model by a decision of its own. */
    boolean withdrawnHere(Stand stand) {
        return with(stand)
                .map(entry -> of(entry.release.version()).orElseThrow().release.stand())
                .anyMatch(decided -> decided == Stand.WITHDRAWN);
    }

    private Stream<Entry> with(Stand stand) {
        return entries.stream().filter(entry -> entry.release.stand() == stand);
    }

    /**
     * The decision about that release: the model's own, else the line's; the same text goes before the same place, where a
     * withdrawal goes before all else.
     */
    Optional<Entry> of(String text) {
        return first(text, true).or(() -> first(text, false));
    }

    private Optional<Entry> first(String text, boolean ofModel) {
        List<Entry> some = entries.stream()
                .filter(entry -> entry.release.modelId().isPresent() == ofModel)
                .toList();
        return some.stream()
                .filter(entry -> entry.release.version().equals(text))
                .findFirst()
                .or(() -> some.stream()
                        .filter(entry -> same(entry.release.version(), text))
                        .min(Comparator.comparing(entry -> entry.release.stand() != Stand.WITHDRAWN)));
    }

    boolean same(String one, String other) {
        return one.equals(other) || compare(one, other).outcome() == Outcome.SAME;
    }

    Comparison compare(String one, String other) {
        return VersionScheme.compare(version(one), version(other));
    }

    Security security(String text) {
        List<SecurityMinimum> missing = new ArrayList<>();
        Optional<String> cannot = Optional.empty();
        for (Minimum one : minimums) {
            if (one.minimum.version().equals(text)) {
                continue;
            }
            Comparison comparison = VersionScheme.compare(version(text), one.version);
            if (comparison.outcome() == Outcome.OLDER) {
                missing.add(one.minimum);
            } else if (!comparison.possible()) {
                cannot = Optional.of(comparison.reason());
            }
        }
        return new Security(missing, cannot);
    }
}
