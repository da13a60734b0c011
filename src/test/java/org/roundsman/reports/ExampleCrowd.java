package org.roundsman.reports;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Invented people on the Wi-Fi of the clinics of {@link ReportExample}: every week is like the others. */
final class ExampleCrowd {

    /** Share of the people in the middle of the day who are there from 8:00 on. */
    private static final double[] WEEKDAY = {0.55, 0.9, 1.0, 0.95, 0.7, 0.8, 0.95, 0.9, 0.75, 0.45};

    private static final double[] SATURDAY = {0.4, 0.6, 0.55, 0.3};

    /** Printers, displays and a till that stay on. */
    private static final double NIGHT = 0.12;

    private ExampleCrowd() {}

    static Crowd of(List<ExampleClinic> clinics, double observed, Instant busiest) {
        double people = clinics.stream().mapToDouble(ExampleClinic::people).sum();
        List<Optional<Crowd.Split>> week = IntStream.range(0, 168)
                .mapToObj(hour -> Optional.of(split(people * share(hour))))
                .toList();
        double mean = IntStream.range(0, 168)
                .mapToDouble(hour -> people * share(hour))
                .average()
                .orElseThrow();
        return new Crowd(
                Optional.of(split(mean)),
                observed,
                Optional.of(new Crowd.Busiest(busiest, ReportExample.LONDON, split(people * 1.3))),
                IntStream.range(0, 24)
                        .mapToObj(hour -> OptionalDouble.of(rounded(people * share(hour))))
                        .toList(),
                week,
                new Crowd.Earlier(
                        OptionalDouble.of(rounded(mean * 0.92)), OptionalDouble.of(rounded(people * 1.2)), 0.9875),
                Crowd.Earlier.NOTHING);
    }

    static Crowd nobodyKnown() {
        return new Crowd(
                Optional.empty(),
                0,
                Optional.empty(),
                Collections.nCopies(24, OptionalDouble.empty()),
                Collections.nCopies(168, Optional.empty()),
                Crowd.Earlier.NOTHING,
                Crowd.Earlier.NOTHING);
    }

    /** @param hour of the week, Monday 0:00 first */
    private static double share(int hour) {
        int day = hour / 24;
        int clock = hour % 24;
        if (day < 5 && clock >= 8 && clock < 18) {
            return WEEKDAY[clock - 8];
        }
        return day == 5 && clock >= 9 && clock < 13 ? SATURDAY[clock - 9] : NIGHT;
    }

    private static Crowd.Split split(double all) {
        double staff = rounded(all * 0.38);
        double guest = rounded(all * 0.56);
        return new Crowd.Split(rounded(all), staff, guest, rounded(rounded(all) - staff - guest));
    }

    private static double rounded(double figure) {
        return BigDecimal.valueOf(figure).setScale(4, RoundingMode.HALF_UP).doubleValue();
    }
}
