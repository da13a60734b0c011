package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The year by month, lists and renewals, and what they cost. */
class YearAheadTest {

    private static final String TODAY = "2026-11-26";
    private static final UnitModel EUR = Invented.model(null, null, null, "189.9", "EUR");
    private static final UnitModel USD = Invented.model(null, null, "2026-11-25", "50", "USD");
    private static final UnitModel BARE = Invented.model(null, null, "2026-11-26", null, "");

    private static List<UnitCover> some() {
        List<UnitCover> all = new ArrayList<>();
        all.add(Invented.ending(1, 5, "2026-11-26", TODAY, EUR));
        all.add(Invented.ending(2, 5, "2026-11-30", TODAY, USD));
        all.add(Invented.ending(3, 5, "2026-11-30", TODAY, BARE));
        all.add(Invented.ending(4, 5, "2027-10-31", TODAY, EUR));
        all.add(Invented.ending(5, 5, "2027-11-01", TODAY, EUR));
        all.add(Invented.ending(6, 5, "2026-11-25", TODAY, EUR));
        all.add(Invented.withoutEnd(7, CoverStatus.MISSING, TODAY));
        all.add(Invented.withoutEnd(8, CoverStatus.COVERED, TODAY));
        return all;
    }

    @Test
    void everyUnitIsInExactlyOnePlace() {
        YearAhead year = YearAhead.of(some(), YearAhead.first(some(), LocalDate.EPOCH));
        assertThat(year.months()).hasSize(12);
        assertThat(year.months().get(0).month()).isEqualTo(YearMonth.of(2026, 11));
        assertThat(year.months().get(11).month()).isEqualTo(YearMonth.of(2027, 10));
        assertThat(year.months().stream().map(one -> one.cost().units()).toList())
                .containsExactly(3, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1);
        assertThat(year.ended().units()).isEqualTo(1);
        assertThat(year.missing().units()).isEqualTo(1);
        assertThat(year.later().units()).isEqualTo(1);
        assertThat(year.open().units()).isEqualTo(1);
        assertThat(year.pastSupport().units())
                .as("the last day of support is none past it")
                .isEqualTo(1);
        int sum = year.months().stream().mapToInt(one -> one.cost().units()).sum();
        assertThat(sum + 4).isEqualTo(some().size());
    }

    @Test
    void currenciesAreNeverAddedUpTogether() {
        Cost november =
                YearAhead.of(some(), YearMonth.of(2026, 11)).months().get(0).cost();
        assertThat(november.sums()).isEqualTo(Map.of("EUR", new BigDecimal("189.90"), "USD", new BigDecimal("50.00")));
        assertThat(november.unpriced()).isEqualTo(1);
    }

    @Test
    void aBarAndItsListAreTheSame() {
        YearAhead year = YearAhead.of(some(), YearMonth.of(2026, 11));
        for (YearAhead.Month month : year.months()) {
            List<UnitCover> list = month(month.month()).of(some());
            assertThat(list).hasSize(month.cost().units());
            assertThat(Cost.of(list)).isEqualTo(month.cost());
        }
    }

    private static CoverSearch month(YearMonth month) {
        OptionalLong all = OptionalLong.empty();
        return new CoverSearch(all, all, all, Optional.of(month), Set.of(), false, "");
    }

    @Test
    void aSearchTakesStatusModelAndWords() {
        OptionalLong all = OptionalLong.empty();
        assertThat(new CoverSearch(all, all, all, Optional.empty(), Set.of(CoverStatus.ENDED), false, "").of(some()))
                .hasSize(1);
        assertThat(new CoverSearch(all, all, all, Optional.empty(), Set.of(), true, "").of(some()))
                .hasSize(1);
        assertThat(new CoverSearch(all, all, all, Optional.empty(), Set.of(), false, " pier  tr-3 ").of(some()))
                .extracting(UnitCover::serial)
                .containsExactly("TR-3");
        assertThat(CoverSearch.everything().of(some()).get(0).serial())
                .as("what ends first")
                .isEqualTo("TR-6");
    }

    @Test
    void renewalsAreThoseOfThePeriodBothDaysIncluded() {
        Renewals renewals = Renewals.of(some(), LocalDate.parse("2026-11-25"), LocalDate.parse("2026-11-30"));
        assertThat(renewals.customers()).hasSize(1);
        assertThat(renewals.customers().get(0).units())
                .extracting(UnitCover::serial)
                .containsExactly("TR-6", "TR-1", "TR-2", "TR-3");
        assertThat(renewals.total().sums())
                .isEqualTo(Map.of("EUR", new BigDecimal("379.80"), "USD", new BigDecimal("50.00")));
        assertThat(renewals.total().unpriced()).isEqualTo(1);
    }
}
