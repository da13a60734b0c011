package org.roundsman.web.chart;

import io.quarkus.qute.RawString;
import java.time.Duration;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.readings.Ribbon;

/**
 * A day as a picture: 96 cells; the bar's height is the clients, its tint the channel utilisation, a hatch hanging from
 * the top is silence, and a cell without a base line was not watched. One path for each tint keeps a page of many
 * ribbons small.
 */
public final class RibbonPicture {

    static final Duration QUARTER = Duration.ofMinutes(15);

    private static final int CELL = 4;
    private static final int WIDTH = Ribbon.CELLS * CELL;
    private static final int TALL = 28;
    private static final int LEAST_HATCH = 6;
    /** So that one single client does not look like a full house. */
    private static final double LEAST_SCALE = 5;

    private final Ribbon ribbon;
    private final double scale;

    private RibbonPicture(Ribbon ribbon) {
        this.ribbon = ribbon;
        this.scale = Math.max(
                LEAST_SCALE,
                ribbon.cells().stream()
                        .mapToDouble(cell -> cell.clients().orElse(0))
                        .max()
                        .orElse(0));
    }

    /**
     * The picture with its description for those who do not see it.
     *
     * @param key unique on the page
     * @param of whose day it is
     * @param zone in which the description names times
     */
    public static RawString of(Ribbon ribbon, String key, String of, ZoneId zone) {
        RibbonPicture picture = new RibbonPicture(ribbon);
        Svg svg = new Svg("ribbon", WIDTH, TALL + 2)
                .stretched()
                .described(key, "Last 24 hours of " + of, RibbonWords.of(ribbon, zone));
        picture.base(svg);
        picture.bars(svg);
        picture.silence(svg);
        return new RawString(svg.toString());
    }

    private void base(Svg svg) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < Ribbon.CELLS; i++) {
            if (ribbon.cells().get(i).watched() > 0) {
                path.append('M').append(i * CELL).append(' ').append(TALL).append("h4v1h-4z");
            }
        }
        svg.path("base", path);
    }

    private void bars(Svg svg) {
        Map<String, StringBuilder> paths = new LinkedHashMap<>();
        for (int i = 0; i < Ribbon.CELLS; i++) {
            Ribbon.Cell cell = ribbon.cells().get(i);
            long height = Math.round(cell.clients().orElse(0) / scale * TALL);
            if (height > 0) {
                paths.computeIfAbsent(Tint.of(cell.utilisation()), tint -> new StringBuilder())
                        .append('M')
                        .append(i * CELL)
                        .append(' ')
                        .append(TALL)
                        .append("v-")
                        .append(height)
                        .append("h3v")
                        .append(height)
                        .append('z');
            }
        }
        paths.forEach(svg::path);
    }

    private void silence(Svg svg) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < Ribbon.CELLS; i++) {
            double silent = ribbon.cells().get(i).silent();
            if (silent > 0) {
                long height = Math.max(LEAST_HATCH, Math.round(silent * TALL));
                path.append('M').append(i * CELL).append(" 0h4v").append(height).append("h-4z");
            }
        }
        svg.hatched("silence", path);
    }
}
