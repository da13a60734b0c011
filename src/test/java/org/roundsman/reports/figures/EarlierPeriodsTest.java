package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.reports.ReportSubject;

/** Days counted by hand on the calendar. */
class EarlierPeriodsTest {

    @ParameterizedTest
    @CsvSource({
        "2026-03-01, 2026-04-01, 2026-02-01, 2026-03-01, 2025-03-01, 2025-04-01",
        "2028-02-01, 2028-03-01, 2028-01-01, 2028-02-01, 2027-02-01, 2027-03-01",
        "2026-01-01, 2026-02-01, 2025-12-01, 2026-01-01, 2025-01-01, 2025-02-01",
        "2026-03-09, 2026-03-16, 2026-03-02, 2026-03-09, 2025-03-09, 2025-03-16",
        "2028-02-28, 2028-03-01, 2028-02-26, 2028-02-28, 2027-02-28, 2027-03-02"
    })
    void monthsCompareWithMonthsAndDaysWithAsManyDays(
            LocalDate from,
            LocalDate to,
            LocalDate monthFrom,
            LocalDate monthTo,
            LocalDate yearFrom,
            LocalDate yearTo) {
        assertThat(EarlierPeriods.of(new ReportSubject(1, "Pebblegate Dental", from, to)))
                .isEqualTo(new EarlierPeriods(monthFrom, monthTo, yearFrom, yearTo));
    }
}
