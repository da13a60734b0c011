package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.catalogue.WarrantyTerms.From;
import org.roundsman.catalogue.WarrantyTerms.Service;

/** Until when a unit is covered, and how that is said. */
class CoverRulesTest {

    private static final LocalDate TODAY = LocalDate.parse("2026-11-26");

    private static Cover of(Unit unit, Contract... contracts) {
        return CoverRules.of(unit, List.of(contracts), TODAY);
    }

    private static List<String> words(Cover cover) {
        return cover.derivation().stream().map(CoverStep::text).toList();
    }

    /**
     * LocalDate.plusMonths, run on its own and checked against PostgreSQL's interval arithmetic where both were run
     * (2026-01-31 + 1 month = 2026-02-28, 2028-02-29 + 12 months = 2029-02-28). Not additive: always from the first day.
     */
    @ParameterizedTest
    @CsvSource({
        "2026-01-31,  1, 2026-02-28",
        "2026-01-31,  2, 2026-03-31",
        "2026-01-31, 12, 2027-01-31",
        "2026-01-31, 36, 2029-01-31",
        "2026-01-31, 60, 2031-01-31",
        "2028-01-31,  1, 2028-02-29",
        "2026-01-30,  1, 2026-02-28",
        "2026-01-29,  1, 2026-02-28",
        "2026-08-31,  1, 2026-09-30",
        "2026-12-31,  1, 2027-01-31",
        "2028-02-29,  1, 2028-03-29",
        "2028-02-29, 12, 2029-02-28",
        "2028-02-29, 36, 2031-02-28",
        "2028-02-29, 60, 2033-02-28",
        "2024-02-29, 48, 2028-02-29"
    })
    void monthsAreAddedWithTheCalendarAndFromTheFirstDay(String bought, int months, String last) {
        Unit unit = Invented.bought(bought, Invented.months(months, From.PURCHASE));
        Cover cover = CoverRules.of(unit, List.of(), LocalDate.parse(last));
        assertThat(cover.lastDay()).contains(LocalDate.parse(last));
        assertThat(cover.status()).as("the last day is covered").isEqualTo(CoverStatus.ENDS_WITHIN_30);
        assertThat(CoverRules.of(unit, List.of(), LocalDate.parse(last).plusDays(1))
                        .status())
                .isEqualTo(CoverStatus.ENDED);
    }

    @Test
    void theDerivationSaysEachStep() {
        Unit leap = Invented.bought("2024-02-29", Invented.months(36, From.PURCHASE));
        assertThat(words(of(leap))).containsExactly("bought 2024-02-29 + 36 months = 2027-02-28");
        assertThat(of(leap).status()).as("94 days ahead").isEqualTo(CoverStatus.ENDS_WITHIN_180);
        assertThat(of(leap).service()).contains(Service.ADVANCE);
        assertThat(words(of(Invented.bought("2026-11-01", Invented.months(1, From.PURCHASE)))))
                .containsExactly("bought 2026-11-01 + 1 month = 2026-12-01");
    }

    @ParameterizedTest
    @CsvSource({
        "PURCHASE,     bought 2025-01-10 + 24 months = 2027-01-10",
        "DELIVERY,     delivered 2025-02-11 + 24 months = 2027-02-11",
        "INSTALLATION, installed 2025-03-12 + 24 months = 2027-03-12",
        "FIRST_SEEN,   first seen 2025-04-13 + 24 months = 2027-04-13"
    })
    void monthsCountFromWhatTheTermsSay(From from, String words) {
        Purchase purchase = Invented.purchase(1, "TR-1", null, "2025-01-10", "2025-02-11", "2025-03-12");
        Unit unit = Invented.unit(Invented.model(Invented.months(24, from)), purchase, "2025-04-13");
        assertThat(words(of(unit))).containsExactly(words);
    }

    @ParameterizedTest
    @CsvSource({
        "PURCHASE,     no date of purchase is entered",
        "DELIVERY,     no date of delivery is entered",
        "INSTALLATION, no date of installation is entered",
        "FIRST_SEEN,   'no serial number was read yet, so no first day is known'"
    })
    void whatIsMissingIsSaidAndNothingIsGuessed(From from, String words) {
        Unit unit = Invented.unit(
                Invented.model(Invented.months(24, from)), Invented.purchase(1, "TR-1", null, null, null, null), null);
        Cover cover = of(unit);
        assertThat(cover.status()).isEqualTo(CoverStatus.MISSING);
        assertThat(cover.lastDay()).isEmpty();
        assertThat(cover.derivation()).containsExactly(CoverStep.missing(words));
    }

    @Test
    void anotherDayThanTheTermsWantDoesNotStandIn() {
        Unit bought = Invented.bought("2025-01-10", Invented.months(24, From.DELIVERY));
        assertThat(of(bought).status()).isEqualTo(CoverStatus.MISSING);
    }

    @Test
    void withoutAModelOrTermsNothingIsKnown() {
        Cover none = of(Invented.unit(null, null, "2025-01-01"));
        assertThat(none.status()).isEqualTo(CoverStatus.MISSING);
        assertThat(words(none)).containsExactly("no model is known");
        Cover bare = of(Invented.unit(Invented.model(null), null, "2025-01-01"));
        assertThat(words(bare)).containsExactly("no warranty terms are entered for Tamarack Radio TR-22");
    }

    @Test
    void lifetimeEndsSoManyMonthsAfterTheEndOfSale() {
        WarrantyTerms terms = new WarrantyTerms.LifetimeAfterSale(60, Optional.empty());
        Unit unit = Invented.unit(Invented.model(terms, "2025-06-30", null, null, ""), null, null);
        assertThat(of(unit).lastDay()).contains(LocalDate.parse("2030-06-30"));
        assertThat(words(of(unit))).containsExactly("end of sale 2025-06-30 + 60 months = 2030-06-30");
        Unit sold = Invented.unit(Invented.model(terms), null, null);
        assertThat(of(sold).status()).isEqualTo(CoverStatus.COVERED);
        assertThat(of(sold).lastDay()).isEmpty();
        assertThat(words(of(sold))).containsExactly("lifetime: no end of sale is announced");
    }

    @Test
    void lifetimeOfTheOwnerHasNoEndAndNoWarrantyIsKnownToBeNone() {
        Unit kept = Invented.unit(Invented.model(new WarrantyTerms.LifetimeOfOwner(Optional.empty())), null, null);
        assertThat(of(kept).status()).isEqualTo(CoverStatus.COVERED);
        assertThat(words(of(kept))).containsExactly("lifetime while the first owner keeps it");
        Cover none = of(Invented.unit(Invented.model(new WarrantyTerms.NoWarranty()), null, null));
        assertThat(none.status()).isEqualTo(CoverStatus.ENDED);
        assertThat(none.lastDay()).isEmpty();
        assertThat(none.begins()).isEmpty();
        assertThat(words(none)).containsExactly("sold without warranty");
        Cover later = of(
                Invented.unit(Invented.model(new WarrantyTerms.NoWarranty()), null, null),
                Invented.contract("C-1", "2027-01-01", "2027-12-31"));
        assertThat(later.lastDay()).isEmpty();
        assertThat(later.begins()).contains(LocalDate.parse("2027-01-01"));
    }

    @Test
    void coverFollowsTheChainWithoutAGap() {
        Unit unit = Invented.bought("2023-12-31", Invented.months(36, From.PURCHASE));
        Cover cover = of(
                unit,
                Invented.contract("C-2", "2029-01-01", "2029-12-31"),
                Invented.contract("C-1042", "2027-01-01", "2028-12-31"));
        assertThat(cover.lastDay()).contains(LocalDate.parse("2029-12-31"));
        assertThat(cover.status()).isEqualTo(CoverStatus.COVERED);
        assertThat(words(cover))
                .containsExactly(
                        "bought 2023-12-31 + 36 months = 2026-12-31",
                        "contract C-1042: 2027-01-01 to 2028-12-31",
                        "contract C-2: 2029-01-01 to 2029-12-31");
        assertThat(cover.service()).as("of what covers today").contains(Service.ADVANCE);
    }

    /** Hand-counted: 2026-12-31 to 2027-02-01 leaves 1 to 31 January, 31 days. */
    @Test
    void aContractAfterAGapDoesNotLengthenTheCoverButIsSaid() {
        Unit unit = Invented.bought("2023-12-31", Invented.months(36, From.PURCHASE));
        Cover cover = of(unit, Invented.contract("C-7", "2027-02-01", "2028-12-31"));
        assertThat(cover.lastDay()).contains(LocalDate.parse("2026-12-31"));
        assertThat(cover.derivation())
                .contains(CoverStep.note("contract C-7 begins 2027-02-01, after a gap of 31 days"));
        Unit old = Invented.bought("2020-11-25", Invented.months(72, From.PURCHASE));
        Cover ended = of(old, Invented.contract("C-8", "2026-11-27", "2027-11-26"));
        assertThat(ended.status())
                .as("ended yesterday, and begins again tomorrow")
                .isEqualTo(CoverStatus.ENDED);
        assertThat(ended.lastDay()).contains(LocalDate.parse("2026-11-25"));
        assertThat(ended.derivation()).contains(CoverStep.note("contract C-8 begins 2026-11-27, after a gap of 1 day"));
    }

    @Test
    void aContractCoversWhereTheTermsAreOverOrNotKnown() {
        Unit old = Invented.bought("2020-01-31", Invented.months(12, From.PURCHASE));
        Cover cover = of(old, Invented.contract("C-9", "2026-01-01", "2026-12-26"));
        assertThat(cover.lastDay()).contains(LocalDate.parse("2026-12-26"));
        assertThat(cover.status()).as("30 days ahead").isEqualTo(CoverStatus.ENDS_WITHIN_30);
        assertThat(cover.service()).contains(Service.BENCH);
        Cover unknown = of(Invented.unit(null, null, null), Invented.contract("C-9", "2026-01-01", "2027-01-25"));
        assertThat(unknown.status()).as("60 days ahead").isEqualTo(CoverStatus.ENDS_WITHIN_60);
        assertThat(words(unknown)).contains("how long the terms of the model cover it is not known");
        Cover over = of(Invented.unit(null, null, null), Invented.contract("C-9", "2025-01-01", "2025-12-31"));
        assertThat(over.status()).isEqualTo(CoverStatus.MISSING);
        assertThat(over.lastDay()).isEmpty();
    }

    /** Hand-counted from 2026-11-26: 30 days to 12-26, 60 to 2027-01-25, 90 to 02-24, 180 to 05-25. */
    @ParameterizedTest
    @CsvSource({
        "2026-11-25, ENDED",
        "2026-11-26, ENDS_WITHIN_30",
        "2026-12-26, ENDS_WITHIN_30",
        "2026-12-27, ENDS_WITHIN_60",
        "2027-01-25, ENDS_WITHIN_60",
        "2027-01-26, ENDS_WITHIN_90",
        "2027-02-24, ENDS_WITHIN_90",
        "2027-02-25, ENDS_WITHIN_180",
        "2027-05-25, ENDS_WITHIN_180",
        "2027-05-26, COVERED"
    })
    void theStatusTurnsOnTheDay(String last, CoverStatus status) {
        assertThat(CoverStatus.of(LocalDate.parse(last), TODAY)).isEqualTo(status);
    }

    /** One moment, two days: 23:30 UTC is the next day in Berlin (+1 h in winter) and the same day in New York. */
    @Test
    void todayIsTheDayOfTheSite() {
        Instant late = Instant.parse("2026-12-31T23:30:00Z");
        Unit unit = Invented.bought("2023-12-31", Invented.months(36, From.PURCHASE));
        assertThat(CoverRules.of(unit, List.of(), day(late, "Europe/Berlin")).status())
                .isEqualTo(CoverStatus.ENDED);
        assertThat(CoverRules.of(unit, List.of(), day(late, "America/New_York")).status())
                .isEqualTo(CoverStatus.ENDS_WITHIN_30);
    }

    private static LocalDate day(Instant at, String zone) {
        return at.atZone(ZoneId.of(zone)).toLocalDate();
    }

    @Test
    void aPurchaseOfAnotherSerialNumberIsNamedAndDoesNotCount() {
        Purchase other = Invented.purchase(4, "OLD-4", 11L, "2025-01-01", null, null);
        Unit device = Invented.unit(Invented.model(Invented.months(36, From.PURCHASE)), null, "2026-01-01");
        Unit joined = new UnitJoin(List.of(other), java.util.Map.of(), java.util.Map.of())
                .devices(List.of(device))
                .get(0);
        assertThat(joined.purchase()).isEmpty();
        assertThat(of(joined).status()).isEqualTo(CoverStatus.MISSING);
        assertThat(words(of(joined)))
                .containsExactly(
                        "the purchase that names this device is of serial number OLD-4, and the device says TR-11: it does"
                                + " not count here",
                        "no date of purchase is entered");
    }
}
