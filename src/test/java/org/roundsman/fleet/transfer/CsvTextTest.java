package org.roundsman.fleet.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVPrinter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** RFC 4180 (from memory) and OWASP ASVS 5.0, 1.2.10. */
class CsvTextTest {

    /** RFC 4180 section 2: quotation, doubled quotation marks, line breaks within a field, nothing for an empty field. */
    static Stream<Arguments> fields() {
        return Stream.of(
                Arguments.of("a,b", "\"a,b\""),
                Arguments.of("say \"hi\"", "\"say \"\"hi\"\"\""),
                Arguments.of("", ""),
                Arguments.of("x\r\ny", "\"x\r\ny\""),
                Arguments.of("x\ny", "\"x\ny\""),
                Arguments.of("plain", "plain"),
                // ASVS 1.2.10, with no exception for numbers
                Arguments.of("=1+1", "'=1+1"),
                Arguments.of("+49 30 1", "'+49 30 1"),
                Arguments.of("-60", "'-60"),
                Arguments.of("@cmd", "'@cmd"),
                Arguments.of("\tx", "'\tx"),
                Arguments.of("\0x", "'\0x"),
                // our own rule, so that reading gives back what was written
                Arguments.of("'=1", "''=1"),
                Arguments.of("'quoted'", "'quoted'"));
    }

    @ParameterizedTest
    @MethodSource("fields")
    void aFieldIsWrittenByTheRuleAndReadBack(String field, String written) throws Exception {
        String text = print(List.of("first", field, "last"));
        assertThat(text).isEqualTo("first," + written + ",last\r\n");
        assertThat(CsvText.records(text, ',')).containsExactly(List.of("first", field, "last"));
    }

    @ParameterizedTest
    @CsvSource({"'''=1+1', '=1+1'", "'''''=1', '''=1'", "'''text', '''text'", "'=1+1', '=1+1'", "'''', ''''"})
    void theApostropheOfTheGuardIsTakenOffAndNoOther(String written, String read) {
        assertThat(Guard.off(written)).isEqualTo(read);
    }

    @Test
    void spacesAreData() throws Unreadable {
        assertThat(CsvText.records(" a , b\r\n", ',')).containsExactly(List.of(" a ", " b"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"a,b\r\nc,d\r\n", "a,b\nc,d\n", "a,b\rc,d", "a,b\r\nc,d", "\"a\",b\nc,\"d\""})
    void everyWayToEndARowIsRead(String text) throws Unreadable {
        assertThat(CsvText.records(text, ',')).containsExactly(List.of("a", "b"), List.of("c", "d"));
    }

    @Test
    void aQuotationThatStaysOpenIsNamedWithItsRow() {
        assertThatThrownBy(() -> CsvText.records("a,b\r\nc,\"d\r\ne,f\r\n", ','))
                .hasMessageContaining("Row 2")
                .hasMessageContaining("none closes it");
        assertThatThrownBy(() -> CsvText.records("a,b\r\nc,\"d\"e\r\n", ','))
                .hasMessageContaining("Row 2")
                .hasMessageContaining("double a quotation mark");
    }

    static String print(List<String> fields) throws IOException {
        StringBuilder text = new StringBuilder();
        CSVPrinter printer = CsvText.printer(text);
        CsvText.print(printer, fields);
        return text.toString();
    }
}
