package org.roundsman.web.alarms;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmChange;
import org.roundsman.alarms.Severity;
import org.roundsman.web.page.Words;

/**
 * One status change, or one thing that somebody did.
 *
 * @param severity the word of the new severity; empty for a clear and for what somebody did
 * @param who who did it; empty for a status change
 * @param what what happened, in words
 */
record PastLine(Instant moment, long order, String at, String severity, String who, String what, String text) {

    /** The newest first, at most so many. */
    static List<PastLine> of(List<AlarmChange> changes, List<AlarmAct> acts, ZoneId zone, int most) {
        return Stream.concat(
                        changes.stream().map(change -> of(change, zone)),
                        acts.stream().map(act -> of(act, zone)))
                .sorted(Comparator.comparing(PastLine::moment)
                        .thenComparing(PastLine::order)
                        .reversed())
                .limit(most)
                .toList();
    }

    private static PastLine of(AlarmChange change, ZoneId zone) {
        return new PastLine(
                change.at(),
                change.id(),
                Words.second(change.at(), zone),
                change.severity().map(Severity::word).orElse(""),
                "",
                change.severity().isPresent() ? "" : "cleared",
                change.text());
    }

    private static PastLine of(AlarmAct act, ZoneId zone) {
        String until = act.until().map(at -> " until " + Words.moment(at, zone)).orElse("");
        return new PastLine(
                act.at(),
                act.id(),
                Words.second(act.at(), zone),
                "",
                act.by(),
                act.kind().word() + until,
                act.text());
    }
}
