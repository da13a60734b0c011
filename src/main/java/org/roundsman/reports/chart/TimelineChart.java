package org.roundsman.reports.chart;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Report;
import org.roundsman.reports.words.Catalogue;

/** Outages on a line of time for each site: a tall bar for the whole site, a low hatched one for a part. */
public final class TimelineChart {

    private static final int MOST_SITES = 12;
    private static final int LEFT = 150;
    private static final int WIDE = 520;
    private static final int ROW = 22;
    private static final int HEAD = 18;
    private static final int BAR = 16;
    private static final double LEAST = 2;
    /** What a date takes. */
    private static final int DATE_WIDE = 36;

    private final Report report;
    private final Catalogue words;
    private final Svg svg = new Svg();
    private final long days;

    private TimelineChart(Report report, Catalogue words) {
        this.report = report;
        this.words = words;
        this.days = ChronoUnit.DAYS.between(
                report.subject().from(), report.subject().to());
    }

    /** Empty when there was no outage. */
    public static Optional<Picture> of(Report report, Catalogue words) {
        return report.outages().isEmpty() ? Optional.empty() : Optional.of(new TimelineChart(report, words).draw());
    }

    private Picture draw() {
        List<List<Outage>> rows = rows();
        int foot = HEAD + rows.size() * ROW;
        dates(foot);
        int shown = 0;
        for (int i = 0; i < rows.size(); i++) {
            double y = HEAD + i * ROW;
            svg.words(
                    LEFT - 8,
                    y + 14,
                    9.5,
                    "end",
                    Svg.INK,
                    Svg.brief(rows.get(i).get(0).site(), 26));
            svg.line(LEFT, y + BAR + 2, LEFT + WIDE, y + BAR + 2, false);
            rows.get(i).forEach(outage -> bar(outage, y));
            shown += rows.get(i).size();
        }
        svg.box(LEFT, foot + 6, 5, 12, Svg.VERMILION);
        svg.words(LEFT + 10, foot + 15, 9, "start", Svg.INK, words.say("legend.whole"));
        svg.edged(LEFT + 200, foot + 12, 8, 6, "#ffffff", false).hatched(LEFT + 200, foot + 12, 8, 6);
        svg.words(LEFT + 214, foot + 15, 9, "start", Svg.INK, words.say("legend.part"));
        String description = words.say("outages.alt", "count", shown);
        return new Picture(words.say("outages.title"), description, foot + 24, svg.toString());
    }

    /** By site; of many, those with the most silence. */
    private List<List<Outage>> rows() {
        Map<Long, List<Outage>> bySite = new LinkedHashMap<>();
        report.outages().forEach(outage -> bySite.computeIfAbsent(outage.siteId(), id -> new ArrayList<>())
                .add(outage));
        return bySite.values().stream()
                .sorted(Comparator.comparing(TimelineChart::silence).reversed())
                .limit(MOST_SITES)
                .sorted(Comparator.comparing(row -> row.get(0).site(), String.CASE_INSENSITIVE_ORDER))
                .toList();
    }

    private static Duration silence(List<Outage> outages) {
        return outages.stream().map(Outage::silence).reduce(Duration.ZERO, Duration::plus);
    }

    private void dates(int foot) {
        long step = Math.max(1, (days + 6) / 7);
        for (long day = 0; day <= days; day++) {
            double x = LEFT + (double) WIDE * day / days;
            boolean named = day % step == 0 && day < days;
            if (days <= 92 || named) {
                svg.line(x, named ? HEAD - 4 : HEAD, x, foot, false);
            }
            if (named) {
                LocalDate date = report.subject().from().plusDays(day);
                boolean last = x > LEFT + WIDE - DATE_WIDE;
                svg.words(
                        last ? LEFT + WIDE : x,
                        10,
                        8.5,
                        last ? "end" : "start",
                        Svg.SOFT,
                        words.formats().dayAndMonth(date));
            }
        }
    }

    private void bar(Outage outage, double y) {
        double from = at(outage.from(), outage.zone());
        double wide = Math.max(LEAST, at(outage.to(), outage.zone()) - from);
        double left = Math.min(from, LEFT + WIDE - wide);
        if (outage.wholeSite()) {
            svg.box(left, y + 2, wide, BAR, Svg.VERMILION);
        } else {
            svg.edged(left, y + 2 + BAR / 2.0, wide, BAR / 2.0, "#ffffff", false);
            svg.hatched(left, y + 2 + BAR / 2.0, wide, BAR / 2.0);
        }
    }

    private double at(Instant moment, ZoneId zone) {
        Instant begin = report.subject().from().atStartOfDay(zone).toInstant();
        Instant end = report.subject().to().atStartOfDay(zone).toInstant();
        double share = (double) Duration.between(begin, moment).toMillis()
                / Duration.between(begin, end).toMillis();
        return LEFT + WIDE * Math.max(0, Math.min(1, share));
    }
}
