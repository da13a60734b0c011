package org.roundsman.web.ahead;

import java.time.LocalDate;
import java.util.Comparator;
import org.roundsman.web.warranty.CoverWords;

/**
 * A day of the next twelve months on which something ends.
 *
 * @param what ends, such as {@code software for TR-10}
 * @param source where the day stands written, or who entered it; or empty
 * @param link to where it is looked after
 * @param sum how many units it touches, and what their replacement costs
 */
record DateLine(LocalDate day, String what, String source, String link, CoverWords.Sum sum) {

    static final Comparator<DateLine> BY_DAY =
            Comparator.comparing(DateLine::day).thenComparing(DateLine::what);
}
