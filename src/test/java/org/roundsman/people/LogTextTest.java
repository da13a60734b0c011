package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** OWASP ASVS 5.0: 16.4.1, a name that was typed cannot forge a line of the log. */
class LogTextTest {

    @Test
    void lineBreaksAndEscapesBecomeVisible() {
        assertThat(LogText.of("wren\n2026 INFO all is well")).isEqualTo("\"wren\\u000a2026 INFO all is well\"");
        assertThat(LogText.of("\u001b[31m\r\u2028\u202e\"")).doesNotContainPattern("[\\p{Cntrl}\u2028\u202e]");
    }

    @Test
    void endlessNamesAreCut() {
        assertThat(LogText.of("x".repeat(5000)).length()).isLessThan(100);
    }

    @Test
    void ordinaryNamesStayReadable() {
        assertThat(LogText.of("zoë@office")).isEqualTo("\"zoë@office\"");
    }
}
