package org.roundsman.web.alarms;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HistorySearchTest {

    private static HistorySearch search(String text, String customer, String severity, String from, String to) {
        return new HistorySearch(text, customer, null, null, null, severity, null, from, to, null);
    }

    @Test
    void whatIsUnderstoodNeedsNoWord() {
        assertThat(search(null, null, null, null, null).leftOut()).isEmpty();
        assertThat(search("pier ap-3", "7", "major", "2026-11-25T12:00", "2026-11-26T12:00")
                        .leftOut())
                .isEmpty();
        assertThat(new HistorySearch(null, null, "4", "5", "device-silent", null, "closed", null, null, "2").leftOut())
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"_", "%", "--", "( )"})
    void wordsOfSignsAloneFindNothingAndThatIsSaid(String words) {
        assertThat(search(words, "", "", "", "").leftOut())
                .isEqualTo("Left out, because it cannot be read: the words, which are signs alone.");
    }

    @Test
    void whatCannotBeReadIsNamed() {
        assertThat(search("pier", "abc", "worst", "yesterday", "2026-13-01T00:00")
                        .leftOut())
                .isEqualTo("Left out, because it cannot be read: the customer; the severity;"
                        + " the time from which it was active; the time up to which it was raised.");
        assertThat(new HistorySearch(null, null, "x", "x", "x", null, "x", null, null, null).leftOut())
                .isEqualTo("Left out, because it cannot be read: the site; the device; the kind; the state.");
    }
}
