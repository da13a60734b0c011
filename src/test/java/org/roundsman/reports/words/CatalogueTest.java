package org.roundsman.reports.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The shipped words. Plural forms are those of the Unicode CLDR: in French 0 takes the form of 1, in English and German not. */
class CatalogueTest {

    private static final Map<Locale, Catalogue> ALL = Catalogues.load("");

    private static Catalogue of(String language) {
        return ALL.get(Locale.forLanguageTag(language));
    }

    @ParameterizedTest
    @ValueSource(strings = {"de", "fr"})
    void eachLanguageHasTheSameKeys(String language) {
        assertThat(Catalogues.shipped(Locale.forLanguageTag(language)).keySet())
                .containsExactlyElementsOf(Catalogues.shipped(Locale.ENGLISH).keySet());
    }

    /** No figure is lost in translation. */
    @ParameterizedTest
    @ValueSource(strings = {"de", "fr"})
    void eachPatternNamesTheSameFigures(String language) {
        Map<String, Set<String>> theirs = new TreeMap<>();
        Catalogues.shipped(Locale.forLanguageTag(language))
                .forEach((key, pattern) -> theirs.put(key, Catalogue.arguments(pattern)));
        assertThat(theirs).isEqualTo(Catalogues.needed());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en | 0 | and 0 more, T altogether",
                "en | 1 | and one more of T",
                "en | 2 | and 2 more, T altogether",
                "de | 0 | und 0 weitere, zusammen T",
                "de | 1 | und ein weiterer von T",
                "de | 2 | und 2 weitere, zusammen T",
                "fr | 0 | et une autre de T",
                "fr | 1 | et une autre de T",
                "fr | 2 | et 2 autres, T au total",
            })
    void numbersChooseTheirForm(String language, int count, String expected) {
        assertThat(of(language).say("outages.rest", "count", count, "time", "T"))
                .isEqualTo(expected);
    }

    /** Numbers in patterns are grouped as the language does it. */
    @Test
    void largeCountsAreGrouped() {
        assertThat(of("en").say("outages.rest", "count", 1234, "time", "T")).contains("1,234");
        assertThat(of("de").say("outages.rest", "count", 1234, "time", "T")).contains("1.234");
        assertThat(of("fr").say("outages.rest", "count", 1234, "time", "T")).contains("1\u202f234");
    }

    /** Imprimerie nationale, Lexique des règles typographiques (from memory): a fine no-break space before double signs. */
    @Test
    void frenchSignsHaveTheirSpace() {
        Catalogues.shipped(Locale.FRENCH).forEach((key, pattern) -> {
            if (!key.equals("formats")) {
                assertThat(pattern)
                        .as(key)
                        .doesNotContainPattern("[^\\u202f][:;!?%»]")
                        .doesNotContainPattern("«[^\\u202f]");
            }
        });
    }

    /** An apostrophe of ASCII would quote what follows. */
    @Test
    void apostrophesAreTypographic() {
        for (String language : List.of("en", "de", "fr")) {
            Catalogues.shipped(Locale.forLanguageTag(language))
                    .forEach((key, pattern) -> assertThat(pattern).as(key).doesNotContain("'"));
        }
    }

    @Test
    void unknownWordsAreAFault() {
        assertThatThrownBy(() -> of("en").say("no.such.key"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no.such.key");
    }

    @Test
    void whoRefusesACatalogueNamesTheKeys() {
        Map<String, Set<String>> needed = Map.of("one", Set.of(), "two", Set.of("count"), "three", Set.of());
        assertThatThrownBy(() ->
                        Catalogue.of(Locale.ITALIAN, Map.of("one", "uno", "two", "{amount}", "formats", "it"), needed))
                .isInstanceOf(CatalogueRefused.class)
                .hasMessageContaining("three=missing")
                .hasMessageContaining("two=names [amount]");
    }

    @Test
    void whatIsNamedByTheReportIsNoPattern() {
        assertThat(of("en").say("joined", "one", "{two}", "two", "it’s {three}"))
                .isEqualTo("{two}: it’s {three}");
    }
}
