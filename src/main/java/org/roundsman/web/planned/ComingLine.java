package org.roundsman.web.planned;

import java.util.List;
import org.roundsman.planned.Occurrence;

/**
 * One time to come.
 *
 * @param when by the clock of the site
 * @param turn what a change of the clock does to it, or empty
 */
record ComingLine(String when, String turn) {

    static List<ComingLine> of(List<Occurrence> occurrences) {
        return occurrences.stream()
                .map(one -> new ComingLine(WorkWords.stretch(one.when(), one.zone()), WorkWords.turn(one)))
                .toList();
    }
}
