package org.roundsman.web.triage;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmChange;
import org.roundsman.web.page.Words;

/**
 * One line of what happened with an alarm.
 *
 * @param by who did it, or empty
 * @param text note, reason or what was seen; may be empty
 */
record HistoryLine(String at, String what, String by, String text) {

    private record Dated(Instant at, HistoryLine line) {}

    /** Both in one list, the newest first, the latest so many. */
    static List<HistoryLine> of(List<AlarmChange> changes, List<AlarmAct> acts, ZoneId zone, int most) {
        List<Dated> all = new ArrayList<>();
        changes.forEach(change -> all.add(new Dated(
                change.at(),
                new HistoryLine(
                        Words.moment(change.at(), zone),
                        change.severity()
                                .map(severity -> "became " + severity.word())
                                .orElse("cleared"),
                        "",
                        change.text()))));
        acts.forEach(act -> all.add(new Dated(
                act.at(),
                new HistoryLine(
                        Words.moment(act.at(), zone),
                        act.kind().word()
                                + act.until()
                                        .map(until -> " until " + Words.moment(until, zone))
                                        .orElse(""),
                        act.by(),
                        act.text()))));
        return all.stream()
                .sorted(Comparator.comparing(Dated::at).reversed())
                .limit(most)
                .map(Dated::line)
                .toList();
    }
}
