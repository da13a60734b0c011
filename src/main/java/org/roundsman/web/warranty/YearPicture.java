package org.roundsman.web.warranty;

import io.quarkus.qute.RawString;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import org.roundsman.warranty.YearAhead.Month;
import org.roundsman.web.chart.Svg;
import org.roundsman.web.page.Words;

/**
 * Twelve bars, one for each month: as high as units end in it, with their number above. Each leads to its list. One tint
 * does, since height and number say it all.
 */
public final class YearPicture {

    private static final int SLOT = 30;
    private static final int WIDTH = 12 * SLOT;
    private static final int HEIGHT = 170;
    private static final int TOP = 22;
    private static final int BASE = 132;
    private static final int GAP = 4;

    /** A single unit among thousands is still seen. */
    private static final double LEAST = 2;

    private final Svg svg;
    private final int most;

    private YearPicture(List<Month> months) {
        most = Math.max(
                1, months.stream().mapToInt(one -> one.cost().units()).max().orElse(1));
        int all = months.stream().mapToInt(one -> one.cost().units()).sum();
        svg = Svg.ofLinks("year", WIDTH, HEIGHT)
                .described(
                        "year",
                        "Warranties that end, by month",
                        Words.many(all, "unit", "units") + " in twelve months. The table below has the same figures.");
    }

    /**
     * @param list address of the list of a month, without the month
     */
    public static RawString of(List<Month> months, String list) {
        YearPicture picture = new YearPicture(months);
        picture.svg.path("grid", "M0 " + BASE + "H" + WIDTH);
        for (int i = 0; i < months.size(); i++) {
            picture.bar(months.get(i), i, list);
        }
        return new RawString(picture.svg.toString());
    }

    private void bar(Month month, int place, String list) {
        int units = month.cost().units();
        double x = place * SLOT;
        double height = units == 0 ? 0 : Math.max(LEAST, (double) units / most * (BASE - TOP));
        String join = list.contains("?") ? "&" : "?";
        svg.link(
                list + join + "month=" + month.month(),
                CoverWords.month(month.month()) + ": " + Words.many(units, "unit", "units"));
        svg.box("hit", x, 0, SLOT, HEIGHT);
        if (units > 0) {
            svg.path(
                    "year-bar",
                    "M" + (x + GAP) + " " + BASE + "v" + -round(height) + "h" + (SLOT - 2 * GAP) + "v" + round(height)
                            + "z");
        }
        svg.text("x", x + SLOT / 2.0, BASE - height - 6, shortened(units));
        svg.text("x", x + SLOT / 2.0, BASE + 15, name(month.month()));
        if (place == 0 || month.month().getMonthValue() == 1) {
            svg.text(
                    "x", x + SLOT / 2.0, BASE + 31, String.valueOf(month.month().getYear()));
        }
        svg.end();
    }

    private static double round(double value) {
        return Math.round(value * 10) / 10.0;
    }

    /** Four digits fit above a bar. */
    private static String shortened(int units) {
        return units < 10_000 ? String.valueOf(units) : units / 1_000 + " k";
    }

    private static String name(YearMonth month) {
        return month.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    }
}
