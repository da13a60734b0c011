package org.roundsman.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {

    @ParameterizedTest
    @CsvSource({
        "0, less than a minute",
        "59, less than a minute",
        "60, 1 min",
        "3599, 59 min",
        "3600, 1 h",
        "12000, 3 h 20 min",
        "86400, 1 day",
        "183600, 2 days 3 h",
        "-5, less than a minute"
    })
    void lengthsAreSaidInTheirTwoLargestUnits(long seconds, String words) {
        assertThat(Words.length(Duration.ofSeconds(seconds))).isEqualTo(words);
    }

    @Test
    void whatIsMissingIsNeverZero() {
        assertThat(Words.count(OptionalInt.empty())).isEqualTo("not available");
        assertThat(Words.figure(OptionalDouble.empty(), 1, "%")).isEqualTo("not available");
        assertThat(Words.rate(OptionalDouble.empty())).isEqualTo("not available");
        assertThat(Words.count(OptionalInt.of(0))).isEqualTo("0");
    }

    @Test
    void figuresHaveARealMinusAndNoNeedlessZeros() {
        assertThat(Words.figure(-92.0, 1, "dBm")).isEqualTo("−92\u00a0dBm");
        assertThat(Words.figure(18.5, 1, "dBm")).isEqualTo("18.5\u00a0dBm");
        assertThat(Words.figure(100, 0, "%")).isEqualTo("100\u00a0%");
        assertThat(Words.figure(-0.001, 1, "")).isEqualTo("0");
        assertThat(Words.figure(12345.6, 0, "")).isEqualTo("12,346");
    }

    /** SI prefixes: k is 1000 (BIPM, SI Brochure, 9th edition, section 3). */
    @Test
    void ratesTakeThePrefixThatFits() {
        assertThat(Words.rate(OptionalDouble.of(999_400))).isEqualTo("999.4\u00a0kb/s");
        assertThat(Words.rate(OptionalDouble.of(12_400_000))).isEqualTo("12.4\u00a0Mb/s");
        assertThat(Words.rate(OptionalDouble.of(1e9))).isEqualTo("1\u00a0Gb/s");
    }
}
