package org.roundsman.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ModelTerms;

/** Terms as the trade writes them; common practice, no source. */
class TermsWordsTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "MONTHS | PURCHASE | 36 | ADVANCE | 36 months from purchase, advance replacement",
                "MONTHS | DELIVERY | 1 | BENCH | 1 month from delivery, return to bench",
                "MONTHS | INSTALLATION | 60 | '' | 60 months from installation",
                "MONTHS | FIRST_SEEN | 12 | '' | 12 months from first seen",
                "LIFETIME_AFTER_SALE | '' | 60 | '' | lifetime: 60 months after end of sale",
                "LIFETIME_OF_OWNER | '' | | ADVANCE | lifetime while the first owner keeps it, advance replacement",
                "NONE | '' | | '' | no warranty"
            })
    void termsAreRead(String kind, String from, Short months, String service, String words) {
        Model model = new Model();
        model.termsKind = kind;
        model.termsFrom = from;
        model.termsMonths = months;
        model.termsService = service;
        assertThat(TermsWords.of(model)).contains(words);
    }

    @Test
    void whereNoneAreEnteredNothingIsSaid() {
        assertThat(TermsWords.of(new Model())).isEmpty();
    }

    /** The words that are checked where they are entered are those that are read here. */
    @Test
    void theWordsOfTheFleetAreTheWordsHere() {
        assertThat(ModelTerms.FROMS)
                .containsExactlyElementsOf(Arrays.stream(WarrantyTerms.From.values())
                        .map(Enum::name)
                        .toList());
        assertThat(ModelTerms.SERVICES)
                .containsExactlyElementsOf(Arrays.stream(WarrantyTerms.Service.values())
                        .map(Enum::name)
                        .toList());
        for (String kind : ModelTerms.KINDS) {
            String from = kind.equals("MONTHS") ? "PURCHASE" : "";
            assertThat(WarrantyTerms.of(kind, from, (short) 12, "")).as(kind).isPresent();
        }
    }
}
