package org.roundsman.web.planned;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.roundsman.planned.Occurrence;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Stretch;
import org.roundsman.planned.Timing;
import org.roundsman.web.page.Words;

/** Times of planned work as a person reads them, always by the clock of a site. */
final class WorkWords {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

    private WorkWords() {}

    /** {@code Sun 29 Mar 2026, 22:00 to 23:30}, with the second day where it is another. */
    static String stretch(Stretch when, ZoneId zone) {
        boolean sameDay = day(when.from(), zone).equals(day(when.to(), zone));
        return day(when.from(), zone) + ", " + clock(when.from(), zone) + " to "
                + (sameDay ? "" : day(when.to(), zone) + ", ") + clock(when.to(), zone);
    }

    private static String day(Instant at, ZoneId zone) {
        return DAY.format(at.atZone(zone));
    }

    static String clock(Instant at, ZoneId zone) {
        return CLOCK.format(at.atZone(zone));
    }

    /** The clock alone for today, and with the day for any other. */
    static String end(Instant at, Instant now, ZoneId zone) {
        return day(at, zone).equals(day(now, zone)) ? clock(at, zone) : Words.moment(at, zone);
    }

    /** When it takes place, without what became of it. */
    static String timing(Timing timing, ZoneId zone) {
        if (timing instanceof Timing.Once once) {
            return stretch(once.when(), zone);
        }
        Timing.Repeating plan = (Timing.Repeating) timing;
        return plan.how().words() + " at " + CLOCK.format(plan.start()) + " for " + Words.length(plan.length());
    }

    /** From which day to which, and not on which; empty for what happens once. */
    static String days(Timing timing) {
        if (!(timing instanceof Timing.Repeating plan)) {
            return "";
        }
        String skipped = plan.skipped().isEmpty()
                ? ""
                : "; not on "
                        + plan.skipped().stream().map(DAY::format).collect(java.util.stream.Collectors.joining(", "));
        return "from " + DAY.format(plan.firstDay())
                + plan.lastDay().map(last -> " to " + DAY.format(last)).orElse("") + skipped;
    }

    static String turn(Occurrence one) {
        String from = clock(one.when().from(), one.zone());
        String to = clock(one.when().to(), one.zone());
        return switch (one.turn()) {
            case NONE -> "";
            case START_SKIPPED -> "The clock is turned and skips the time entered: it begins at " + from + ".";
            case START_TWICE -> "The clock is turned back and shows " + from + " twice: it begins at the first.";
            case DURING ->
                "The clock is turned during it: it takes "
                        + Words.length(one.when().length()) + " and ends at " + to + ".";
            case THAT_DAY -> "The clock is turned that day, not during it.";
        };
    }

    static String state(PlannedWindow.State state) {
        return switch (state) {
            case RUNNING -> "going on";
            case COMING -> "to come";
            case REPEATING -> "repeating";
            case OVER -> "over";
            case CANCELLED -> "cancelled";
            case REPLACED -> "changed";
        };
    }

    /** As fields of the type datetime-local take it. */
    static String field(Instant at, ZoneId zone) {
        return at.atZone(zone).toLocalDateTime().truncatedTo(ChronoUnit.MINUTES).toString();
    }

    static String left(Instant end, Instant now) {
        return Words.length(Duration.between(now, end)) + " left";
    }
}
