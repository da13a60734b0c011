package org.roundsman.planned;

import java.time.Duration;
import java.time.LocalDate;
import java.util.stream.Collectors;

/** A timing in words that do not depend on a time zone, for the audit. */
final class TimingWords {

    private TimingWords() {}

    static String of(Timing timing) {
        if (timing instanceof Timing.Once once) {
            return "once, " + once.when().from() + " to " + once.when().to();
        }
        Timing.Repeating plan = (Timing.Repeating) timing;
        return plan.how().words() + " at " + plan.start() + " for " + length(plan.length()) + ", from "
                + plan.firstDay() + plan.lastDay().map(day -> " to " + day).orElse("")
                + (plan.skipped().isEmpty()
                        ? ""
                        : ", not on "
                                + plan.skipped().stream()
                                        .map(LocalDate::toString)
                                        .collect(Collectors.joining(", ")));
    }

    static String length(Duration length) {
        long minutes = length.toMinutes();
        String hours = minutes < 60 ? "" : minutes / 60 + " h";
        return minutes % 60 == 0 && minutes > 0 ? hours : (hours + " " + minutes % 60 + " min").strip();
    }
}
