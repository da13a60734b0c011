package org.roundsman.reports;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Who was on the Wi-Fi: clients at the same time. A quarter hour's clients are those of all access points with a figure; an hour's
 * are the mean of its quarter hours with figures.
 *
 * @param clients mean over all hours with figures
 * @param observed share of the hours that have figures, 0 to 1
 * @param busiest the hour with the most clients; of several the first
 * @param typicalDay 24 figures by the hour of the clock: the median over the days; empty where no day has one
 * @param week 168 figures, Monday 0:00 first: the mean of that hour over the weeks
 * @param monthBefore the same stretch a month earlier; for other stretches the same number of days before
 * @param yearBefore the same stretch a year earlier
 */
public record Crowd(
        Optional<Split> clients,
        double observed,
        Optional<Busiest> busiest,
        List<OptionalDouble> typicalDay,
        List<Optional<Split>> week,
        Earlier monthBefore,
        Earlier yearBefore) {

    public Crowd {
        typicalDay = List.copyOf(typicalDay);
        week = List.copyOf(week);
        if (typicalDay.size() != 24 || week.size() != 168) {
            throw new IllegalArgumentException(typicalDay.size() + " hours a day, " + week.size() + " a week");
        }
    }

    /**
     * Clients by what their network is for.
     *
     * @param all together
     * @param other on networks for neither, and those whose network is not known
     */
    public record Split(double all, double staff, double guest, double other) {}

    /** The busiest hour, which begins {@code at}, by the clock of {@code zone}. */
    public record Busiest(Instant at, ZoneId zone, Split clients) {}

    /**
     * An earlier stretch, to compare with.
     *
     * @param clients mean over its hours with figures
     * @param busiest clients of its busiest hour
     * @param observed share of its hours that have figures, 0 to 1
     */
    public record Earlier(OptionalDouble clients, OptionalDouble busiest, double observed) {
        public static final Earlier NOTHING = new Earlier(OptionalDouble.empty(), OptionalDouble.empty(), 0);
    }
}
