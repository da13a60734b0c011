package org.roundsman.dispatch.work;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.reports.ReportLook.PaperSize;

/** What holds where a customer has no plan, and when months are due and over. Pure. */
public final class Plans {

    /** Readings that were kept while the database was away come in within this time, as a rule. */
    static final Duration LATE_READINGS = Duration.ofHours(1);

    private static final int DAY = 3;
    private static final int HOUR = 6;
    static final int KEEP_MONTHS = 24;

    private Plans() {}

    /** Nothing by itself, and nothing unread. */
    public static ReportPlan untouched(long customerId, ZoneId zone, Locale language) {
        return new ReportPlan(
                customerId, false, DAY, HOUR, zone, language, PaperSize.A4, List.of(), true, false, KEEP_MONTHS);
    }

    /**
     * When the report of that month is built: in the month after. An hour that is left out where clocks are turned comes right
     * after the gap, and of one that comes twice the first counts.
     */
    static Instant due(ReportPlan plan, YearMonth month) {
        return month.plusMonths(1)
                .atDay(plan.day())
                .atTime(plan.hour(), 0)
                .atZone(plan.zone())
                .toInstant();
    }

    /** The first month whose report is due after that. */
    public static YearMonth next(ReportPlan plan, Instant now) {
        YearMonth last = YearMonth.from(now.atZone(plan.zone())).minusMonths(1);
        return due(plan, last).isAfter(now) ? last : last.plusMonths(1);
    }

    /** When the days before that one are over in all these zones, and late readings are in. @param zones none counts as UTC */
    public static Instant over(LocalDate to, List<ZoneId> zones) {
        return zones.stream()
                .map(zone -> to.atStartOfDay(zone).toInstant())
                .max(Instant::compareTo)
                .orElseGet(() -> to.atStartOfDay(ZoneOffset.UTC).toInstant())
                .plus(LATE_READINGS);
    }
}
