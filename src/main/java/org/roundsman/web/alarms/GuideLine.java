package org.roundsman.web.alarms;

import org.roundsman.web.page.Words;

/**
 * A figure beside its guide value.
 *
 * @param more about the figure, or empty
 * @param standing within, near or over; of shares, within, above or below
 */
record GuideLine(String measure, String figure, String more, String guide, String standing) {

    private static final String WITHIN = "within the guide";
    private static final String NEAR = "above it, still manageable";
    private static final String OVER = "over the limit";
    private static final String ABOVE = "above the guide";
    private static final String BELOW = "below the guide";

    /** A rate with an acceptable value and the limit of what can be managed. */
    static GuideLine rate(String measure, double figure, double acceptable, double limit) {
        String standing = figure <= acceptable ? WITHIN : figure <= limit ? NEAR : OVER;
        return new GuideLine(
                measure,
                Words.figure(figure, 2, ""),
                "",
                "about " + Words.figure(acceptable, 0, "") + ", at the limit " + Words.figure(limit, 0, ""),
                standing);
    }

    /** A count that should not be greater than that. */
    static GuideLine most(String measure, double figure, double limit, String guide) {
        return new GuideLine(measure, Words.figure(figure, 1, ""), "", guide, figure <= limit ? WITHIN : OVER);
    }

    /** A share that should be below that. */
    static GuideLine below(String measure, double share, double limit) {
        return new GuideLine(measure, percent(share), "", "under " + percent(limit), share < limit ? WITHIN : OVER);
    }

    /** A share that should not be greater than that. */
    static GuideLine share(String measure, double share, double limit, String guide) {
        return new GuideLine(measure, percent(share), "", guide, share <= limit ? WITHIN : OVER);
    }

    /** A share of the severe, of which there should be about that or less; "about" is to the whole per cent. */
    static GuideLine aboutOrLess(String measure, double share, int percent) {
        return new GuideLine(measure, percent(share), "", about(percent), whole(share) <= percent ? WITHIN : ABOVE);
    }

    /** A share of the harmless, of which there should be about that or more. */
    static GuideLine aboutOrMore(String measure, double share, int percent) {
        return new GuideLine(measure, percent(share), "", about(percent), whole(share) >= percent ? WITHIN : BELOW);
    }

    private static String about(int percent) {
        return "about " + percent + "\u00a0%";
    }

    private static long whole(double share) {
        return Math.round(share * 100);
    }

    GuideLine with(String words) {
        return new GuideLine(measure, figure, words, guide, standing);
    }

    static String percent(double share) {
        return Words.figure(share * 100, 1, "%");
    }

    /** Whether it stands out: over its limit, or away from its share. */
    public boolean over() {
        return standing.equals(OVER) || standing.equals(ABOVE) || standing.equals(BELOW);
    }
}
