package org.roundsman.web.chart;

import io.quarkus.qute.RawString;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.roundsman.measure.Condition;
import org.roundsman.readings.Series;
import org.roundsman.readings.Span;
import org.roundsman.web.page.Words;

/** Figures over time: the mean as a line, least and most as a band around it, silence hatched, unwatched time greyed. */
public final class ChartPicture {

    private static final int WIDTH = 300;
    private static final int HEIGHT = 130;
    private static final int LEFT = 36;
    private static final int RIGHT = 6;
    private static final int TOP = 8;
    private static final int BOTTOM = 20;
    private static final double PLOT_WIDTH = WIDTH - LEFT - RIGHT;
    private static final double PLOT_HEIGHT = HEIGHT - TOP - BOTTOM;
    /** A line is broken where more than that many steps have no figure. */
    private static final double GAP = 1.5;

    private final Chart chart;
    private final Scale scale;
    private final Svg svg;

    private ChartPicture(Chart chart) {
        this.chart = chart;
        this.scale = Scale.of(chart.least(), chart.most(), chart.leastTop());
        this.svg = new Svg("chart", WIDTH, HEIGHT).described(chart.key(), chart.title(), describe(chart));
    }

    /** The picture with its description. */
    public static RawString of(Chart chart) {
        ChartPicture picture = new ChartPicture(chart);
        picture.conditions();
        picture.frame();
        for (int i = 0; i < chart.series().size(); i++) {
            picture.figures(chart.series().get(i), i == 0);
        }
        return new RawString(picture.svg.toString());
    }

    private static String describe(Chart chart) {
        if (chart.blank()) {
            return "No figures in this time.";
        }
        return "Between " + Words.figure(chart.least(), 1, chart.unit()) + " and "
                + Words.figure(chart.most(), 1, chart.unit()) + ". The table below holds the figures.";
    }

    private void conditions() {
        StringBuilder silent = new StringBuilder();
        StringBuilder blind = new StringBuilder();
        for (Span span : chart.spans()) {
            if (span.condition() == Condition.SILENT || span.condition() == Condition.REFUSING) {
                block(silent, span);
            } else if (span.condition() == Condition.UNWATCHED) {
                block(blind, span);
            }
        }
        svg.path("blind", blind).hatched("silence", silent);
    }

    private void block(StringBuilder path, Span span) {
        double from = x(span.from());
        double to = x(span.to().orElse(chart.window().to()));
        if (to > from) {
            path.append('M').append(Svg.number(from)).append(' ').append(TOP);
            path.append('h')
                    .append(Svg.number(Math.max(1, to - from)))
                    .append('v')
                    .append(Svg.number(PLOT_HEIGHT));
            path.append("H").append(Svg.number(from)).append('z');
        }
    }

    private void frame() {
        StringBuilder lines = new StringBuilder();
        for (double figure : scale.lines()) {
            double y = y(figure);
            lines.append('M')
                    .append(LEFT)
                    .append(' ')
                    .append(Svg.number(y))
                    .append('h')
                    .append(Svg.number(PLOT_WIDTH));
            svg.text("y", LEFT - 5, y + 4, Words.figure(figure, scale.step() < 1 ? 2 : 1, ""));
        }
        for (Range.Tick tick : chart.window().range().ticks(chart.window())) {
            double x = x(tick.at());
            lines.append('M')
                    .append(Svg.number(x))
                    .append(' ')
                    .append(Svg.number(TOP + PLOT_HEIGHT))
                    .append("v4");
            if (x > LEFT + 8 && x < WIDTH - 14) {
                svg.text("x", x, HEIGHT - 5, tick.text());
            }
        }
        svg.path("grid", lines);
    }

    private void figures(Series series, boolean first) {
        StringBuilder line = new StringBuilder();
        StringBuilder band = new StringBuilder();
        List<Series.Point> points = series.points();
        int begin = 0;
        for (int i = 1; i <= points.size(); i++) {
            if (i == points.size() || apart(points.get(i - 1), points.get(i))) {
                stretch(points.subList(begin, i), line, band);
                begin = i;
            }
        }
        if (first) {
            svg.path("area", band);
        }
        svg.path(first ? "line" : "line second", line);
    }

    private boolean apart(Series.Point one, Series.Point next) {
        double steps = Duration.between(one.at(), next.at()).toSeconds()
                / (double) chart.window().step().toSeconds();
        return steps > GAP;
    }

    private void stretch(List<Series.Point> points, StringBuilder line, StringBuilder band) {
        for (int i = 0; i < points.size(); i++) {
            Series.Point point = points.get(i);
            to(line, i == 0, point, point.mean());
            to(band, i == 0, point, point.max());
        }
        if (points.size() == 1) {
            line.append("h1.5");
        }
        for (int i = points.size() - 1; i >= 0; i--) {
            to(band, false, points.get(i), points.get(i).min());
        }
        band.append('z');
    }

    private void to(StringBuilder path, boolean begin, Series.Point point, double figure) {
        Instant middle = point.at().plus(chart.window().step().dividedBy(2));
        path.append(begin ? 'M' : 'L').append(Svg.number(x(middle))).append(' ');
        path.append(Svg.number(y(figure / chart.divisor())));
    }

    private double x(Instant at) {
        return LEFT + chart.window().at(at) * PLOT_WIDTH;
    }

    private double y(double figure) {
        return TOP + (1 - scale.at(figure)) * PLOT_HEIGHT;
    }
}
