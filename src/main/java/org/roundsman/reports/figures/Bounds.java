package org.roundsman.reports.figures;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.roundsman.reports.ReportSubject;

/** Where the days of a report begin and end by a clock, up to the moment of the report. */
record Bounds(ReportSubject subject, Instant asOf) {

    /** No clock on earth begins a day earlier, and none ends it later. */
    private static final ZoneId FIRST = ZoneOffset.ofHours(14);

    private static final ZoneId LAST = ZoneOffset.ofHours(-12);

    Instant from(ZoneId zone) {
        return start(subject.from(), zone);
    }

    /** The end, exclusive: of the last day, or the moment of the report while that lies before; never before the begin. */
    Instant to(ZoneId zone) {
        Instant end = start(subject.to(), zone);
        Instant cut = asOf.isBefore(end) ? asOf : end;
        return cut.isBefore(from(zone)) ? from(zone) : cut;
    }

    boolean covers(Instant at, ZoneId zone) {
        return !at.isBefore(from(zone)) && at.isBefore(to(zone));
    }

    /** Nothing of the report lies before, wherever its sites are. */
    Instant earliest() {
        return from(FIRST);
    }

    /** Nothing of the report lies after, wherever its sites are. */
    Instant latest() {
        return to(LAST);
    }

    static Instant start(LocalDate day, ZoneId zone) {
        return day.atStartOfDay(zone).toInstant();
    }
}
