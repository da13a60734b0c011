package org.roundsman.web.reports;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.YearMonth;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.fleet.InputRejected;

/** What addresses and forms of reports say. */
class ReportFormsTest {

    private static final YearMonth NOW = YearMonth.of(2026, 11);

    private static ReviewForm form(String was, String remark) {
        return new ReviewForm(remark, was, null, null, null, null, null, null, null);
    }

    /** HTML, 4.10.21.3: forms send line breaks as CR LF, wherever they came from. */
    @Test
    void aRemarkCountsAsTypedOnlyWhereItDiffersFromWhatThePageShowed() {
        assertThat(form("One\n\nTwo", "One\r\n\r\nTwo").changedRemark()).isEmpty();
        assertThat(form("One", "One\r\nTwo").changedRemark()).contains("One\nTwo");
        assertThat(form("One", "").changedRemark()).as("emptied").contains("");
        assertThat(form(null, null).changedRemark()).as("no such field").isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "2026-10, 2026-10",
        "2026-11, 2026-11",
        "2025-02, 2025-02",
        "2026-12, 2026-10",
        "'', 2026-10",
        "x, 2026-10",
        "9999999999-01, 2026-10"
    })
    void theDeskOpensTheLastMonthThatIsOverUnlessAnotherIsAskedFor(String asked, YearMonth opened) {
        assertThat(new DeskAsked(asked, "").wanted(NOW)).isEqualTo(opened);
    }

    @Test
    void theLastDayOfAReportOfAnyDaysCounts() {
        DaysForm.Days days = new DaysForm("7", "2026-10-03", "2026-10-17").days();
        assertThat(days).isEqualTo(new DaysForm.Days(7, LocalDate.of(2026, 10, 3), LocalDate.of(2026, 10, 18)));
        assertThatThrownBy(() -> new DaysForm("", "2026-10-32", "").days())
                .asInstanceOf(InstanceOfAssertFactories.type(InputRejected.class))
                .satisfies(e -> assertThat(e.faults()).containsOnlyKeys("customer", "from", "last"));
        assertThatThrownBy(() -> new DaysForm("7", "2026-10-03", "2026-10-02").days())
                .asInstanceOf(InstanceOfAssertFactories.type(InputRejected.class))
                .satisfies(e -> assertThat(e.faults()).containsOnlyKeys("last"));
    }

    @Test
    void recipientsMayStandInLinesOrBetweenSigns() {
        assertThat(Asked.addresses(" a@brook.example;b@brook.example\r\n, a@brook.example c@brook.example "))
                .containsExactly("a@brook.example", "b@brook.example", "c@brook.example");
        assertThat(Asked.addresses(null)).isEmpty();
    }
}
