package org.roundsman.web.firmware;

import java.time.Instant;
import java.util.List;
import org.roundsman.firmware.FigureChange;
import org.roundsman.firmware.FigureChange.Outcome;
import org.roundsman.firmware.FirmwareChange;
import org.roundsman.web.page.Words;

/**
 * A change of firmware as the list shows it.
 *
 * @param unit that another unit took the place, in words; empty where it stayed
 * @param at when it was first read, by the clock of the site
 * @param restart about the restart, in words
 * @param state how far the comparison is
 */
record UpgradeLine(
        long deviceId,
        String device,
        String site,
        String customer,
        String at,
        String old,
        String fresh,
        String unit,
        String restart,
        List<Figure> figures,
        String state) {

    /** One figure of both weeks. */
    record Figure(String name, String words, String outcome, boolean differs) {

        static Figure of(FigureChange change) {
            String unit = change.figure().unit();
            String share = Math.round(100.0 * change.quarters() / FigureChange.WHOLE_WEEK) + " % of a week";
            String words = Words.figure(change.before(), 1, unit) + " before, " + Words.figure(change.after(), 1, unit)
                    + " after, over " + (change.thin() ? "only " : "") + share;
            Outcome outcome = change.outcome();
            return new Figure(
                    change.figure().word(),
                    words,
                    outcome.word(),
                    outcome == Outcome.HIGHER || outcome == Outcome.LOWER);
        }
    }

    static UpgradeLine of(FirmwareChange change, Instant now) {
        return new UpgradeLine(
                change.deviceId(),
                change.device(),
                change.place().site(),
                change.place().customer(),
                Words.second(change.at(), change.place().zone()),
                change.old(),
                change.fresh(),
                change.otherUnit()
                        .map(unit -> "no upgrade: the unit of serial number " + unit.newSerial() + " took the place of "
                                + unit.oldSerial())
                        .orElse(""),
                change.restartedAt()
                        .map(at ->
                                "restarted at " + Words.clock(at, change.place().zone()))
                        .orElse("no restart was seen"),
                change.otherUnit().isPresent()
                        ? List.of()
                        : change.figures().stream().map(Figure::of).toList(),
                state(change, now));
    }

    private static String state(FirmwareChange change, Instant now) {
        if (change.otherUnit().isPresent()) {
            return "not compared: another unit stands there";
        }
        if (change.settled()) {
            return change.figures().isEmpty() ? "nothing to compare: it changed again, or there are no readings" : "";
        }
        return change.comparedAt().isEmpty()
                ? "compared from two days after the change on"
                : (change.figures().isEmpty() ? "no readings of both weeks yet" : "so far")
                        + "; last worked out "
                        + Words.ago(change.comparedAt().get(), now);
    }
}
