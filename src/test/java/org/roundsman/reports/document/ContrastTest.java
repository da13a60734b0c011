package org.roundsman.reports.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ratios of WCAG 2.2, worked out independently (docs of the rule: success criterion 1.4.3). */
class ContrastTest {

    @ParameterizedTest
    @CsvSource({
        "#000000, 21.0000, true",
        "#777777,  4.4781, false",
        "#767676,  4.5422, true",
        "#949494,  3.0335, false",
        "#ff0000,  3.9985, false",
        "#008000,  5.1374, true",
        "#0000ff,  8.5925, true",
        "#ffa500,  1.9748, false",
        "#b00020,  7.3250, true",
        "#595959,  7.0047, true",
        "#ffffff,  1.0000, false"
    })
    void aColourIsTakenWhereItReadsOnWhite(String colour, double ratio, boolean reads) {
        assertThat(Contrast.toWhite(colour)).isCloseTo(ratio, within(0.00005));
        assertThat(Contrast.readable(colour)).isEqualTo(reads ? colour : "#000000");
    }

    @Test
    void whatIsNoColourIsBlack() {
        assertThat(Contrast.readable("")).isEqualTo("#000000");
        assertThat(Contrast.readable("red; } body { display: none")).isEqualTo("#000000");
    }
}
