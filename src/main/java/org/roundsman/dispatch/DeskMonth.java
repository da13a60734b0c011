package org.roundsman.dispatch;

import java.time.YearMonth;
import java.util.List;
import java.util.Map;

/**
 * The reports of a month.
 *
 * @param lines every customer with a site, by name
 * @param counts how many of the newest revisions are in which state; every state has its number
 * @param without how many customers have no report of it
 */
public record DeskMonth(YearMonth month, List<DeskLine> lines, Map<ReportState, Integer> counts, int without) {

    public DeskMonth {
        lines = List.copyOf(lines);
    }
}
