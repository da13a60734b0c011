package org.roundsman.reports;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;

/**
 * Of whom and of which days a report is. Each site counts these days by its own clock.
 *
 * @param from first day
 * @param to the day after the last one
 */
public record ReportSubject(long customerId, String customer, LocalDate from, LocalDate to) {

    public ReportSubject {
        if (!from.isBefore(to)) {
            throw new IllegalArgumentException("from " + from + " to " + to + " lies no day");
        }
    }

    public static ReportSubject of(long customerId, String customer, YearMonth month) {
        return new ReportSubject(
                customerId, customer, month.atDay(1), month.plusMonths(1).atDay(1));
    }

    /** The last day that counts. */
    @JsonIgnore
    public LocalDate last() {
        return to.minusDays(1);
    }

    /** The month, where it is exactly one. */
    @JsonIgnore
    public Optional<YearMonth> month() {
        return from.getDayOfMonth() == 1 && from.plusMonths(1).equals(to)
                ? Optional.of(YearMonth.from(from))
                : Optional.empty();
    }
}
