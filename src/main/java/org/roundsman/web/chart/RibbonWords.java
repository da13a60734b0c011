package org.roundsman.web.chart;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.roundsman.readings.Ribbon;
import org.roundsman.web.page.Words;

/** A ribbon in one or two sentences. */
final class RibbonWords {

    private RibbonWords() {}

    static String of(Ribbon ribbon, ZoneId zone) {
        StringBuilder text = new StringBuilder();
        text.append(peak(ribbon, zone)).append(' ').append(busiest(ribbon, zone));
        long silent = ribbon.cells().stream().filter(c -> c.silent() > 0).count();
        if (silent > 0) {
            text.append(" Silence in ")
                    .append(Words.many(silent, "quarter hour", "quarter hours"))
                    .append('.');
        }
        Duration blank =
                time(ribbon.cells().stream().filter(c -> c.watched() == 0).count());
        if (!blank.isZero()) {
            text.append(" Not watched for ").append(Words.length(blank)).append('.');
        }
        return text.toString();
    }

    private static Duration time(long cells) {
        return RibbonPicture.QUARTER.multipliedBy(cells);
    }

    private static String peak(Ribbon ribbon, ZoneId zone) {
        int best = -1;
        for (int i = 0; i < Ribbon.CELLS; i++) {
            if (clients(ribbon, i) > (best < 0 ? -1 : clients(ribbon, best))) {
                best = i;
            }
        }
        return best < 0
                ? "No clients were counted."
                : "Most clients: " + Words.figure(clients(ribbon, best), 0, "") + " around " + at(ribbon, best, zone)
                        + ".";
    }

    private static double clients(Ribbon ribbon, int i) {
        return ribbon.cells().get(i).clients().orElse(-1);
    }

    private static String busiest(Ribbon ribbon, ZoneId zone) {
        int best = -1;
        for (int i = 0; i < Ribbon.CELLS; i++) {
            if (utilisation(ribbon, i) > (best < 0 ? -1 : utilisation(ribbon, best))) {
                best = i;
            }
        }
        return best < 0
                ? "Channel utilisation is not available."
                : "Highest channel utilisation: " + Words.figure(utilisation(ribbon, best), 0, "%") + " around "
                        + at(ribbon, best, zone) + ".";
    }

    private static double utilisation(Ribbon ribbon, int i) {
        return ribbon.cells().get(i).utilisation().orElse(-1);
    }

    private static String at(Ribbon ribbon, int cell, ZoneId zone) {
        Instant start = ribbon.from().plus(RibbonPicture.QUARTER.multipliedBy(cell));
        return Words.clock(start, zone);
    }
}
