package org.roundsman.reports.chart;

/**
 * Five tints of blue on white, each darker than the one before, so that they tell apart in grey as well, and the ink that reads on
 * each with 4.5:1 or more (WCAG 2.2, 1.4.3).
 */
enum Tint {
    NONE("#ffffff", Svg.INK),
    FAINT("#dceaf4", Svg.INK),
    LIGHT("#a9cbe3", Svg.INK),
    MIDDLE("#6aa5cd", Svg.INK),
    STRONG(Svg.BLUE, "#ffffff"),
    DEEP("#00304d", "#ffffff");

    final String fill;
    final String ink;

    Tint(String fill, String ink) {
        this.fill = fill;
        this.ink = ink;
    }

    /** @param share of a whole, 0 to 1 */
    static Tint ofAmount(double share) {
        return values()[(int) Math.max(0, Math.min(5, Math.ceil(share * 5 - 1e-9)))];
    }
}
