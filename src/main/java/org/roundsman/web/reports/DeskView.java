package org.roundsman.web.reports;

import java.util.List;
import org.roundsman.web.page.Faults;

/**
 * The month's desk as its page shows it.
 *
 * @param month such as {@code 2026-10}
 * @param title such as {@code October 2026}
 * @param previous address of the month before
 * @param next address of the month after, or empty
 * @param self address of the part that refreshes itself; empty while nothing goes on
 * @param bars how many reports are how far
 * @param tabs filters with their counts
 * @param rows of the chosen filter
 * @param all how many customers there are
 * @param buildable how many of them have no report of the month, or one that failed
 * @param review address of the next report to review, or empty
 * @param sendable how many were reviewed and have recipients
 * @param sends whether the person sends reports
 */
record DeskView(
        String month,
        String title,
        String previous,
        String next,
        String self,
        List<Bar> bars,
        List<Tab> tabs,
        List<DeskRow> rows,
        int all,
        int buildable,
        String review,
        int sendable,
        boolean sends) {

    /** How many of all are so far. */
    record Bar(String key, String name, int done, int all, String words) {}

    /** A filter with its count. */
    record Tab(String title, String link, boolean here) {}

    /**
     * The whole page.
     *
     * @param months to choose from
     * @param customers to choose from, for a report of other days
     * @param said what could not be done, or empty
     */
    record Whole(
            DeskView desk, List<Choice> months, List<Choice> customers, DaysForm days, Faults faults, String said) {}
}
