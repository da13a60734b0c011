package org.roundsman.web.reports;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.roundsman.dispatch.KeptReport;

/** Days, months and moments of reports as pages of ours say them; the document itself says them in its own language. */
final class Periods {

    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter ZONE = DateTimeFormatter.ofPattern("z", Locale.UK);

    private Periods() {}

    static String month(YearMonth month) {
        return MONTH.format(month);
    }

    /** The month, or first and last day: {@code 3 Oct 2026 to 17 Oct 2026}. */
    static String of(KeptReport report) {
        return report.month().map(Periods::month).orElseGet(() -> days(report.from(), report.to()));
    }

    /** @param to the day after the last one */
    private static String days(LocalDate from, LocalDate to) {
        LocalDate last = to.minusDays(1);
        return from.equals(last) ? DAY.format(from) : DAY.format(from) + " to " + DAY.format(last);
    }

    /** With the zone's short name: on one page stand customers of several. */
    static String moment(Instant at, ZoneId zone) {
        return MOMENT.format(at.atZone(zone)) + " " + ZONE.format(at.atZone(zone));
    }
}
