package org.roundsman.reports.chart;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.roundsman.reports.Report;
import org.roundsman.reports.SiteFigures;
import org.roundsman.reports.Watch;
import org.roundsman.reports.words.Catalogue;
import org.roundsman.reports.words.Formats;

/**
 * A calendar for each site: a cell a day, darker the less the Wi-Fi was there, with the figure in it. A day that was not observed is
 * blank, planned work is hatched.
 */
public final class CalendarChart {

    /** Sites that are drawn; of more, those with the lowest figures. */
    public static final int MOST_SITES = 9;

    /** Days that are drawn at most. */
    public static final int MOST_DAYS = 62;

    private static final int ACROSS = 3;
    private static final int BLOCK = 232;
    private static final int CELL = 30;
    private static final int TALL = 26;
    private static final int HEAD = 32;
    private static final int LEGEND = 44;

    private static final double[] BOUNDS = {1, 0.999, 0.99, 0.95, 0.8};

    private final Report report;
    private final Catalogue words;
    private final Formats formats;
    private final Svg svg = new Svg();

    private CalendarChart(Report report, Catalogue words) {
        this.report = report;
        this.words = words;
        this.formats = words.formats();
    }

    /** Empty for more days than fit. */
    public static Optional<Picture> of(Report report, Catalogue words) {
        long days = ChronoUnit.DAYS.between(
                report.subject().from(), report.subject().to());
        return days > MOST_DAYS || report.sites().isEmpty()
                ? Optional.empty()
                : Optional.of(new CalendarChart(report, words).draw());
    }

    private Picture draw() {
        List<SiteFigures> sites = drawn();
        int block = HEAD + weeks() * TALL + 10;
        for (int i = 0; i < sites.size(); i++) {
            site(sites.get(i), i % ACROSS * BLOCK, i / ACROSS * block);
        }
        int foot = (sites.size() + ACROSS - 1) / ACROSS * block;
        legend(foot);
        return new Picture(words.say("calendar.title"), description(), foot + LEGEND, svg.toString());
    }

    private List<SiteFigures> drawn() {
        if (report.sites().size() <= MOST_SITES) {
            return report.sites();
        }
        return report.sites().stream()
                .sorted(Comparator.comparingDouble(site -> site.whole().share().orElse(2)))
                .limit(MOST_SITES)
                .toList();
    }

    private LocalDate firstMonday() {
        LocalDate from = report.subject().from();
        return from.minusDays(from.getDayOfWeek().getValue() - 1L);
    }

    private int weeks() {
        return (int) (ChronoUnit.DAYS.between(firstMonday(), report.subject().last()) / 7) + 1;
    }

    private void site(SiteFigures site, int left, int top) {
        svg.words(left, top + 11, 11, "start", Svg.INK, Svg.brief(site.site(), 34));
        for (DayOfWeek day : DayOfWeek.values()) {
            double middle = left + (day.getValue() - 0.5) * CELL;
            svg.words(middle, top + 26, 8.5, "middle", Svg.SOFT, formats.weekday(day));
        }
        for (SiteFigures.Day day : site.days()) {
            long at = ChronoUnit.DAYS.between(firstMonday(), day.date());
            cell(day, left + at % 7 * CELL, top + HEAD + at / 7 * TALL);
        }
    }

    private void cell(SiteFigures.Day day, double x, double y) {
        Watch watch = day.watch();
        Optional<Double> share = share(watch);
        Tint tint = share.map(CalendarChart::tint).orElse(Tint.NONE);
        boolean partly = share.isPresent() && watch.coverage().orElse(1) < 0.5;
        svg.edged(x + 0.5, y + 0.5, CELL - 2, TALL - 2, tint.fill, partly);
        double planned = watch.length().isZero()
                ? 0
                : (double) watch.planned().toMillis() / watch.length().toMillis();
        if (planned > 0 && share.isEmpty()) {
            svg.hatched(x + 0.5, y + 0.5, CELL - 2, TALL - 2);
            svg.box(x + 1, y + 1, 12, 9, "#ffffff");
        } else if (planned > 0) {
            double wide = Math.max(4, (CELL - 2) * planned);
            svg.box(x + 0.5, y + TALL - 6.5, wide, 5, "#ffffff");
            svg.hatched(x + 0.5, y + TALL - 6.5, wide, 5);
        }
        String number = Integer.toString(day.date().getDayOfMonth());
        svg.words(x + 2.5, y + 8.5, 7, "start", share.isEmpty() ? Svg.SOFT : tint.ink, number);
        share.ifPresent(
                figure -> svg.words(x + CELL / 2.0 - 0.5, y + 18, 9.5, "middle", tint.ink, formats.bareShare(figure)));
    }

    private static Optional<Double> share(Watch watch) {
        return watch.share().isPresent() ? Optional.of(watch.share().getAsDouble()) : Optional.empty();
    }

    static Tint tint(double share) {
        int step = 0;
        while (step < BOUNDS.length && share < BOUNDS[step]) {
            step++;
        }
        return Tint.values()[step];
    }

    private void legend(int top) {
        double x = 0;
        for (int i = 0; i <= BOUNDS.length; i++) {
            boolean last = i == BOUNDS.length;
            String label = (last ? "< " : i == 0 ? "" : "≥ ") + formats.share(BOUNDS[last ? i - 1 : i]);
            svg.edged(x + 0.5, top + 4.5, 14, 10, Tint.values()[i].fill, false);
            svg.words(x + 19, top + 13, 9, "start", Svg.INK, label);
            x += 76;
        }
        svg.edged(0.5, top + 23.5, 14, 10, "#ffffff", false);
        svg.words(19, top + 32, 9, "start", Svg.INK, words.say("legend.unobserved"));
        svg.edged(190.5, top + 23.5, 14, 10, "#ffffff", false).hatched(190.5, top + 23.5, 14, 10);
        svg.words(209, top + 32, 9, "start", Svg.INK, words.say("legend.planned"));
        svg.edged(400.5, top + 23.5, 14, 10, "#ffffff", true);
        svg.words(419, top + 32, 9, "start", Svg.INK, words.say("legend.partly"));
    }

    private record Bad(SiteFigures site, LocalDate day, double share) {}

    private String description() {
        List<Bad> bad = report.sites().stream()
                .flatMap(site -> site.days().stream()
                        .filter(day -> day.watch().share().orElse(1) < 1)
                        .map(day ->
                                new Bad(site, day.date(), day.watch().share().getAsDouble())))
                .toList();
        Optional<Bad> worst = bad.stream().min(Comparator.comparingDouble(Bad::share));
        return words.say(
                "calendar.alt",
                "bad",
                bad.stream().map(Bad::day).distinct().count(),
                "worst",
                worst.map(one -> formats.share(one.share())).orElse(""),
                "site",
                worst.map(one -> one.site().site()).orElse(""),
                "day",
                worst.map(one -> formats.day(one.day())).orElse(""));
    }
}
