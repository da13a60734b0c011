package org.roundsman.reports.figures;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.roundsman.reports.ReportSubject;

/**
 * The days with which a report compares: of a calendar month those of the month before and of the same month a year before;
 * else as many days just before, and as many from the same day a year before. Ends are exclusive.
 */
public record EarlierPeriods(LocalDate monthFrom, LocalDate monthTo, LocalDate yearFrom, LocalDate yearTo) {

    public static EarlierPeriods of(ReportSubject subject) {
        LocalDate from = subject.from();
        LocalDate yearFrom = from.minusYears(1);
        if (subject.month().isPresent()) {
            return new EarlierPeriods(from.minusMonths(1), from, yearFrom, yearFrom.plusMonths(1));
        }
        long days = ChronoUnit.DAYS.between(from, subject.to());
        return new EarlierPeriods(from.minusDays(days), from, yearFrom, yearFrom.plusDays(days));
    }
}
