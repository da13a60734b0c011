package org.roundsman.reports.chart;

import java.time.DayOfWeek;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.roundsman.reports.Crowd;
import org.roundsman.reports.Report;
import org.roundsman.reports.words.Catalogue;
import org.roundsman.reports.words.Formats;

/** Connected devices: a bar for each hour of a typical day above seven rows of 24 cells with their numbers, darker for more. */
public final class WeekChart {

    private static final int LEFT = 46;
    private static final int CELL = 26;
    private static final int TALL = 17;
    private static final int BARS = 44;
    private static final int GRID = BARS + 30;
    private static final int HEIGHT = GRID + 7 * TALL + 26;

    private final Crowd crowd;
    private final Catalogue words;
    private final Formats formats;
    private final Svg svg = new Svg();
    private final double top;

    private WeekChart(Crowd crowd, Catalogue words) {
        this.crowd = crowd;
        this.words = words;
        this.formats = words.formats();
        double most = IntStream.range(0, 168)
                .mapToObj(crowd.week()::get)
                .flatMap(Optional::stream)
                .mapToDouble(Crowd.Split::all)
                .max()
                .orElse(0);
        this.top = roundUp(Math.max(
                most,
                crowd.typicalDay().stream()
                        .mapToDouble(figure -> figure.orElse(0))
                        .max()
                        .orElse(0)));
    }

    /** Empty when nothing was counted. */
    public static Optional<Picture> of(Report report, Catalogue words) {
        return report.crowd().clients().isEmpty()
                ? Optional.empty()
                : Optional.of(new WeekChart(report.crowd(), words).draw());
    }

    /** The least of 1, 2, 5, 10, 20, 50 ... that is no less. */
    static double roundUp(double most) {
        double power = Math.pow(10, Math.floor(Math.log10(Math.max(1, most))));
        for (double round : new double[] {1, 2, 5}) {
            if (most <= round * power) {
                return round * power;
            }
        }
        return 10 * power;
    }

    private Picture draw() {
        typicalDay();
        for (DayOfWeek day : DayOfWeek.values()) {
            double y = GRID + (day.getValue() - 1) * TALL;
            svg.words(LEFT - 6, y + 12, 9.5, "end", Svg.INK, formats.weekday(day));
            for (int hour = 0; hour < 24; hour++) {
                cell((day.getValue() - 1) * 24 + hour, LEFT + hour * CELL, y);
            }
        }
        scale();
        return new Picture(words.say("people.title"), description(), HEIGHT, svg.toString());
    }

    private void typicalDay() {
        svg.words(0, 10, 9, "start", Svg.SOFT, words.say("people.typical"));
        for (int hour = 0; hour < 24; hour++) {
            double x = LEFT + hour * CELL;
            OptionalDouble figure = crowd.typicalDay().get(hour);
            if (figure.isPresent()) {
                double tall = figure.getAsDouble() / top * BARS;
                svg.box(x + 4, 16 + BARS - tall, CELL - 8, tall, Svg.BLUE);
            }
            if (hour % 3 == 0) {
                svg.words(x, GRID - 4, 8.5, "start", Svg.SOFT, formats.hour(hour));
            }
        }
        svg.line(LEFT, 16 + BARS, LEFT + 24 * CELL, 16 + BARS, false);
    }

    private void cell(int at, double x, double y) {
        Optional<Crowd.Split> split = crowd.week().get(at);
        if (split.isEmpty()) {
            return;
        }
        double all = split.get().all();
        Tint tint = Tint.ofAmount(all / top);
        svg.edged(x + 0.5, y + 0.5, CELL - 1, TALL - 1, tint.fill, false);
        svg.words(x + CELL / 2.0, y + 12, 9, "middle", tint.ink, formats.whole(all));
    }

    private void scale() {
        double y = GRID + 7 * TALL + 8;
        for (int step = 1; step <= 5; step++) {
            double x = LEFT + (step - 1) * 80;
            String label = formats.number(top * (step - 1) / 5) + "–" + formats.number(top * step / 5);
            svg.edged(x + 0.5, y + 0.5, 14, 10, Tint.values()[step].fill, false);
            svg.words(x + 19, y + 9, 9, "start", Svg.INK, label);
        }
        svg.words(LEFT + 400, y + 9, 9, "start", Svg.INK, words.say("legend.devices"));
    }

    private String description() {
        int fullest = IntStream.range(0, 168)
                .filter(at -> crowd.week().get(at).isPresent())
                .reduce((a, b) -> all(b) > all(a) ? b : a)
                .orElse(-1);
        boolean some = fullest >= 0;
        return words.say(
                "people.alt",
                "kind",
                some ? "some" : "none",
                "day",
                some ? formats.weekdayInFull(DayOfWeek.of(fullest / 24 + 1)) : "",
                "hour",
                some ? formats.hour(fullest % 24) : "",
                "count",
                some ? formats.number(all(fullest)) : "");
    }

    private double all(int at) {
        return crowd.week().get(at).orElseThrow().all();
    }
}
