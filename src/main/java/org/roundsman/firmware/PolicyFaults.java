package org.roundsman.firmware;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.firmware.Comparison.Outcome;
import org.roundsman.firmware.Release.Stand;

/** What is wrong with an entry of the policy, by field; each method gives an empty map where nothing is. */
final class PolicyFaults {

    private static final int LONGEST_REASON = 500;
    private static final int LONGEST_IDENTIFIER = 80;
    private static final int LONGEST_EXCEPTION_YEARS = 5;

    /** Where each day ends last: the westernmost zone of ships, of ISO 8601 offset -12:00. */
    private static final ZoneOffset LAST_ON_EARTH = ZoneOffset.ofHours(-12);

    private final LinePolicy line;
    private final VersionScheme versions;
    private final LocalDate today;
    private final LocalDate earliest;
    private final Map<String, String> faults = new LinkedHashMap<>();

    /**
     * @param now a day that has begun anywhere on Earth counts as begun, and one that has not ended everywhere as not ended
     */
    PolicyFaults(LinePolicy line, Instant now) {
        this.line = line;
        this.versions = line.versions();
        this.today = now.atOffset(ZoneOffset.UTC).toLocalDate();
        this.earliest = now.atOffset(LAST_ON_EARTH).toLocalDate();
    }

    Map<String, String> of(ReleaseDraft draft) {
        model(draft.modelId());
        text("reason", draft.reason(), LONGEST_REASON);
        if (draft.stand() == null) {
            faults.put("stand", "recommended, accepted, pilot or withdrawn");
            return faults;
        }
        boolean withdrawn = draft.stand() == Stand.WITHDRAWN;
        version(draft.version(), !withdrawn);
        if (withdrawn && draft.reason().isEmpty()) {
            faults.putIfAbsent("reason", "say why it was withdrawn");
        }
        notAhead("withdrawnOn", draft.withdrawnOn());
        notAhead("releasedOn", draft.releasedOn());
        if (faults.isEmpty()) {
            besideOthers(draft);
        }
        return faults;
    }

    private void besideOthers(ReleaseDraft draft) {
        Version version = versions.read(draft.version());
        for (Release other : line.releases()) {
            boolean sameModels = other.modelId().equals(optional(draft.modelId()));
            if (!sameModels || other.version().equals(draft.version())) {
                continue;
            }
            if (VersionScheme.compare(version, versions.read(other.version())).outcome() == Outcome.SAME) {
                faults.putIfAbsent("version", other.version() + " is listed already and is the same release");
            }
            if (draft.stand() == Stand.PILOT && other.stand() == Stand.PILOT) {
                faults.putIfAbsent("stand", other.version() + " is the pilot release: decide about that one first");
            }
        }
        if (draft.stand() == Stand.RECOMMENDED) {
            notBelowMinimum(draft, version);
        }
    }

    private void notBelowMinimum(ReleaseDraft draft, Version version) {
        for (SecurityMinimum minimum : line.minimums()) {
            boolean holds = minimum.modelId().isEmpty() || minimum.modelId().equals(optional(draft.modelId()));
            Comparison comparison = VersionScheme.compare(version, versions.read(minimum.version()));
            if (holds && comparison.outcome() == Outcome.OLDER) {
                faults.putIfAbsent(
                        "version", "older than " + minimum.version() + ", the minimum for " + minimum.identifier());
            }
        }
    }

    Map<String, String> of(MinimumDraft draft) {
        model(draft.modelId());
        version(draft.version(), true);
        if (draft.identifier().isEmpty()) {
            faults.put("identifier", "name the fix, such as the number of an advisory");
        }
        text("identifier", draft.identifier(), LONGEST_IDENTIFIER);
        text("note", draft.note(), LONGEST_REASON);
        return faults;
    }

    Map<String, String> of(ExceptionDraft draft, boolean customerThere) {
        if (!customerThere) {
            faults.put("customer", "choose a customer");
        }
        if (!draft.version().isEmpty()) {
            version(draft.version(), false);
        }
        if (draft.reason().isEmpty()) {
            faults.put("reason", "say why");
        }
        text("reason", draft.reason(), LONGEST_REASON);
        if (draft.lastDay() == null) {
            faults.put("lastDay", "the last day on which it holds, such as " + today.plusMonths(1));
        } else if (draft.lastDay().isBefore(earliest)
                || draft.lastDay().isAfter(today.plusYears(LONGEST_EXCEPTION_YEARS))) {
            faults.put("lastDay", "from today to " + LONGEST_EXCEPTION_YEARS + " years ahead");
        }
        return faults;
    }

    private void model(Long id) {
        if (id != null && line.models().stream().noneMatch(model -> model.id() == id)) {
            faults.put("model", "choose a model of this line");
        }
    }

    private void version(String text, boolean readable) {
        if (text.isEmpty()) {
            faults.put("version", "must not be empty");
        } else if (text.length() > VersionScheme.LONGEST || text.chars().anyMatch(c -> c < ' ')) {
            faults.put("version", "at most " + VersionScheme.LONGEST + " characters, without breaks");
        } else if (readable && versions.read(text) instanceof Version.Unreadable unreadable) {
            faults.put("version", "cannot be compared: " + unreadable.reason());
        }
    }

    private void text(String field, String text, int longest) {
        if (text.length() > longest || text.indexOf('\0') >= 0) {
            faults.putIfAbsent(field, "at most " + longest + " characters");
        }
    }

    private void notAhead(String field, LocalDate day) {
        if (day != null && (day.isAfter(today.plusDays(1)) || day.getYear() < 1990)) {
            faults.putIfAbsent(field, "not before 1990 and not later than today");
        }
    }

    static OptionalLong optional(Long id) {
        return Optional.ofNullable(id).map(OptionalLong::of).orElseGet(OptionalLong::empty);
    }
}
