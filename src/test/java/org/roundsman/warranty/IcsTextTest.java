package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** RFC 5545, 3.1 (lines), 3.3.4, 3.3.5, 3.3.11 (values). */
class IcsTextTest {

    private static String text(IcsText text) {
        return new String(text.octets(), StandardCharsets.UTF_8);
    }

    @Test
    void seventyFiveOctetsStandAndSeventySixFold() {
        assertThat(text(new IcsText().line("x".repeat(75)))).isEqualTo("x".repeat(75) + "\r\n");
        assertThat(text(new IcsText().line("x".repeat(76)))).isEqualTo("x".repeat(75) + "\r\n x\r\n");
        assertThat(text(new IcsText().line("x".repeat(149))))
                .isEqualTo("x".repeat(75) + "\r\n " + "x".repeat(74) + "\r\n");
    }

    /** Two octets in UTF-8: 74 and 2 do not fit into 75. */
    @Test
    void aFoldNeverLiesInsideACharacter() {
        assertThat(text(new IcsText().line("x".repeat(74) + "ü"))).isEqualTo("x".repeat(74) + "\r\n ü\r\n");
    }

    @Test
    void textIsEscapedAndTheColonIsNot() {
        assertThat(IcsText.escaped("Warranty; site A, floor 2")).isEqualTo("Warranty\\; site A\\, floor 2");
        assertThat(IcsText.escaped("a\\b")).isEqualTo("a\\\\b");
        assertThat(IcsText.escaped("a:\r\nb\nc\u0007\r")).isEqualTo("a:\\nb\\nc");
    }

    @Test
    void daysAndMomentsAreWrittenPlainly() {
        assertThat(text(new IcsText().day("DTSTART", LocalDate.parse("2027-03-31"))))
                .isEqualTo("DTSTART;VALUE=DATE:20270331\r\n");
        assertThat(text(new IcsText().moment("DTSTAMP", Instant.parse("2026-11-26T11:05:09Z"))))
                .isEqualTo("DTSTAMP:20261126T110509Z\r\n");
    }

    @Property(tries = 3000)
    void anyTextComesBackAndNoLineIsTooLong(@ForAll String words) {
        IcsText text = new IcsText().text("SUMMARY", words);
        for (String line : text(text).split("\r\n")) {
            assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
        }
        assertThat(text(text).replace("\r\n ", "")).isEqualTo("SUMMARY:" + IcsText.escaped(words) + "\r\n");
    }
}
