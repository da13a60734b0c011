package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.fleet.ModelEnds.Announced;

/** What may be entered about a model. Common practice of the trade, no source, but where one is named. */
class ModelDraftTest {

    private static final ModelDraft PLAIN = ModelDraft.plain("Tamarack Radio", "TR-22", DeviceKind.ACCESS_POINT);

    private static ModelDraft with(ModelBuild build) {
        return new ModelDraft(
                "Tamarack Radio",
                "TR-22",
                DeviceKind.ACCESS_POINT,
                "",
                build,
                ListPrice.NONE,
                null,
                ModelTerms.NONE,
                ModelEnds.NONE,
                "");
    }

    private static ModelDraft with(ListPrice price, ModelTerms terms, ModelEnds ends) {
        return new ModelDraft(
                PLAIN.maker(), PLAIN.name(), PLAIN.kind(), "", ModelBuild.UNKNOWN, price, null, terms, ends, "");
    }

    @Test
    void littleIsEnough() {
        assertThat(PLAIN.faults()).isEmpty();
        assertThat(ModelDraft.plain(" ", "", null).faults()).containsOnlyKeys("maker", "name", "kind");
    }

    /** Class of power: 0 to 8 (IEEE 802.3). */
    @ParameterizedTest
    @CsvSource({
        "2, 2, '2.4,5', internal, 3, false, ''",
        "4, 16, '2.4,5,6,60', external, 8, false, ''",
        "0, , '', '', , true, ''",
        "9, 2, '', '', , false, radios",
        "-1, 2, '', '', , false, radios",
        "2, 17, '', '', , false, streams",
        "2, 0, '', '', , false, streams",
        "2, 2, '2.4,7', '', , false, bands",
        "2, 2, '', outside, , false, antenna",
        "2, 2, '', '', 9, false, poeClass",
        "2, 2, '', '', 3, true, mains"
    })
    void theBuildIsChecked(
            int radios, Integer streams, String bands, String antenna, Integer poeClass, boolean mains, String fault) {
        ModelBuild build = new ModelBuild(radios, streams, bands, antenna, false, poeClass, mains, "");
        assertThat(String.join(",", with(build).faults().keySet())).isEqualTo(fault);
    }

    @Test
    void aSwitchHasNoRadio() {
        ModelDraft draft = new ModelDraft(
                "Tamarack Radio",
                "TS-24",
                DeviceKind.NETWORK_SWITCH,
                "",
                new ModelBuild(1, 2, "5", "internal", false, null, true, "rack"),
                ListPrice.NONE,
                null,
                ModelTerms.NONE,
                ModelEnds.NONE,
                "");
        assertThat(draft.faults()).containsOnlyKeys("radios", "streams", "bands", "antenna");
    }

    @ParameterizedTest
    @CsvSource({
        "'5, 2.4', '2.4,5'",
        "'2.4 GHz; 5GHz / 6 ghz', '2.4,5,6'",
        "'5,5', 5",
        "'', ''",
        "' , ', ''",
        "'7,5', '5,7'"
    })
    void bandsAreKeptInOneManner(String written, String kept) {
        assertThat(ModelBuild.plainBands(written)).isEqualTo(kept);
        assertThat(ModelBuild.plainBands(kept)).isEqualTo(kept);
    }

    /**
     * ISO 4217 gives the yen no minor unit and the Bahraini dinar three digits (from java.util.Currency and from memory). To
     * XXX, XTS, gold and special drawing rights its list one says that no minor unit applies (from memory).
     */
    @ParameterizedTest
    @CsvSource({
        "249.00, EUR, ''",
        "0, EUR, ''",
        "0.001, BHD, ''",
        "12, JPY, ''",
        "12.5, JPY, listPrice",
        "1.005, EUR, listPrice",
        "-1, EUR, listPrice",
        "1000000000, EUR, listPrice",
        "5, '', currency",
        ", EUR, currency",
        "5, EURO, currency",
        "5, XXZ, currency",
        "5, XXX, currency",
        "5, XTS, currency",
        "5, XAU, currency",
        "5, XDR, currency"
    })
    void aPriceNeedsItsCurrency(BigDecimal amount, String currency, String fault) {
        ModelDraft draft = with(new ListPrice(amount, currency), ModelTerms.NONE, ModelEnds.NONE);
        assertThat(String.join(",", draft.faults().keySet())).isEqualTo(fault);
    }

    @ParameterizedTest
    @CsvSource({
        "MONTHS, PURCHASE, 36, ADVANCE, ''",
        "MONTHS, FIRST_SEEN, 1, '', ''",
        "LIFETIME_AFTER_SALE, '', 600, BENCH, ''",
        "LIFETIME_OF_OWNER, '', , ADVANCE, ''",
        "NONE, '', , '', ''",
        "'', '', , '', ''",
        "MONTHS, '', 36, '', termsFrom",
        "MONTHS, PURCHASE, , '', termsMonths",
        "MONTHS, PURCHASE, 0, '', termsMonths",
        "MONTHS, PURCHASE, 601, '', termsMonths",
        "LIFETIME_AFTER_SALE, '', , '', termsMonths",
        "LIFETIME_AFTER_SALE, PURCHASE, 60, '', termsFrom",
        "LIFETIME_OF_OWNER, '', 12, '', termsMonths",
        "NONE, '', , ADVANCE, termsService",
        "'', '', , BENCH, termsService",
        "YEARS, '', , '', termsKind",
        "MONTHS, BIRTH, 36, '', termsFrom",
        "MONTHS, PURCHASE, 36, PIGEON, termsService"
    })
    void termsSayNoMoreAndNoLessThanTheyNeed(String kind, String from, Integer months, String service, String fault) {
        ModelDraft draft = with(ListPrice.NONE, new ModelTerms(kind, from, months, service), ModelEnds.NONE);
        assertThat(String.join(",", draft.faults().keySet())).isEqualTo(fault);
    }

    @ParameterizedTest
    @CsvSource({
        "2026-01-31, 2028-01-31, 2030-01-31, ''",
        "2026-01-31, 2026-01-31, 2026-01-31, ''",
        ", , , ''",
        "2026-01-31, , 2026-01-30, endOfSupport",
        "2026-01-31, 2026-01-30, , endOfSoftware",
        ", 2026-01-31, 2026-01-30, endOfSupport",
        "2026-01-31, 2025-01-31, 2027-01-31, endOfSoftware",
        "1989-12-31, , , endOfSale",
        ", , 2101-01-01, endOfSupport"
    })
    void endsComeInTheirOrder(LocalDate sale, LocalDate software, LocalDate support, String fault) {
        ModelEnds ends = new ModelEnds(announced(sale), announced(software), announced(support));
        assertThat(String.join(
                        ",",
                        with(ListPrice.NONE, ModelTerms.NONE, ends).faults().keySet()))
                .isEqualTo(fault);
    }

    private static Announced announced(LocalDate day) {
        return day == null ? Announced.NOTHING : new Announced(day, "notice TR-2026-03 of the maker (invented)");
    }

    @Test
    void aDayNeedsItsSourceAndASourceItsDay() {
        ModelEnds ends = new ModelEnds(
                new Announced(LocalDate.of(2026, 1, 31), " "), new Announced(null, "a rumour"), Announced.NOTHING);
        assertThat(with(ListPrice.NONE, ModelTerms.NONE, ends).faults())
                .containsOnlyKeys("endOfSaleSource", "endOfSoftwareSource");
    }

    /** The first arc is 0 to 2 (ITU-T X.660), and a number has no leading zero. */
    @ParameterizedTest
    @ValueSource(strings = {"1", "3.6.1", "1.3.06", "1.3.", ".1.3", "1.3.a", "1 .3"})
    void anObjectIdIsDottedNumbers(String objectId) {
        ModelDraft draft = new ModelDraft(
                "Tamarack Radio",
                "TR-22",
                DeviceKind.ACCESS_POINT,
                objectId,
                ModelBuild.UNKNOWN,
                ListPrice.NONE,
                null,
                ModelTerms.NONE,
                ModelEnds.NONE,
                "");
        assertThat(draft.faults()).containsOnlyKeys("objectId");
    }
}
