package org.roundsman.reports.chart;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.roundsman.reports.RadioFigures;
import org.roundsman.reports.Report;
import org.roundsman.reports.words.Catalogue;
import org.roundsman.reports.words.Formats;

/** The busiest radios: a bar up to the 95th percentile of each, with the line from which a channel counts as busy. */
public final class RadioChart {

    /** Radios that are drawn. */
    public static final int MOST = 12;

    private static final int ROW = 15;
    private static final int LEFT = 230;
    private static final int WIDE = 380;
    private static final int HEAD = 16;

    private RadioChart() {}

    /** Those with a figure, the busiest first. */
    public static List<RadioFigures> worst(Report report) {
        return report.radios().stream()
                .filter(radio -> radio.utilisation().isPresent())
                .sorted(Comparator.comparingDouble(
                                (RadioFigures radio) -> -radio.utilisation().getAsDouble())
                        .thenComparing(RadioFigures::site)
                        .thenComparing(RadioFigures::device)
                        .thenComparingInt(RadioFigures::number))
                .toList();
    }

    /** What a radio is called: by its band where that is known. */
    public static String name(RadioFigures radio, Catalogue words) {
        return radio.band().isPresent()
                ? words.say(
                        "channels.band",
                        "device",
                        radio.device(),
                        "band",
                        words.formats().number(radio.band().getAsDouble()))
                : words.say("channels.radio", "device", radio.device(), "number", radio.number());
    }

    /** Empty when nothing was measured. */
    public static Optional<Picture> of(Report report, Catalogue words) {
        List<RadioFigures> radios = worst(report).stream().limit(MOST).toList();
        return radios.isEmpty() ? Optional.empty() : Optional.of(draw(radios, words));
    }

    private static Picture draw(List<RadioFigures> radios, Catalogue words) {
        Formats formats = words.formats();
        Svg svg = new Svg();
        int foot = HEAD + radios.size() * ROW;
        for (int percent = 0; percent <= 100; percent += 20) {
            double x = LEFT + WIDE * percent / 100.0;
            svg.line(x, HEAD - 2, x, foot, false);
            svg.words(x, 10, 8.5, "middle", Svg.SOFT, formats.percent(percent, 0));
        }
        for (int i = 0; i < radios.size(); i++) {
            bar(svg, radios.get(i), HEAD + i * ROW, words);
        }
        double line = LEFT + WIDE * RadioFigures.BUSY / 100;
        svg.line(line, HEAD - 2, line, foot + 3, true);
        svg.words(line, foot + 12, 8.5, "middle", Svg.INK, formats.percent(RadioFigures.BUSY, 0));
        RadioFigures first = radios.get(0);
        String description = words.say(
                "channels.alt",
                "what",
                name(first, words),
                "figure",
                formats.percent(first.utilisation().getAsDouble(), 1));
        return new Picture(words.say("channels.title"), description, foot + 16, svg.toString());
    }

    private static void bar(Svg svg, RadioFigures radio, double y, Catalogue words) {
        double figure = radio.utilisation().getAsDouble();
        double wide = WIDE * Math.max(0, Math.min(100, figure)) / 100;
        boolean busy = figure >= RadioFigures.BUSY;
        svg.words(LEFT - 6, y + 11, 9, "end", Svg.INK, Svg.brief(name(radio, words), 40));
        svg.box(LEFT, y + 2, wide, ROW - 4, busy ? Svg.VERMILION : Svg.BLUE);
        if (busy) {
            svg.hatched(LEFT, y + 2, wide, ROW - 4);
        }
        String text = words.formats().percent(figure, 1);
        svg.words(LEFT + WIDE + 8, y + 11, 9, "start", Svg.INK, text);
    }
}
