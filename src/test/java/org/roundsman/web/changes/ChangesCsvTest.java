package org.roundsman.web.changes;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;

/** The file is RFC 4180, and no cell of it is a formula (OWASP ASVS 5.0, 1.2.10: the six characters stand there). */
class ChangesCsvTest {

    private static final Actor MARA = new Actor("mara", 1L, Actor.Via.PAGE, "", "192.0.2.17");

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+49 30 5550142", "-1", "@sum(A1)", "\tx", "\0x"})
    void whatASpreadsheetWouldCalculateGetsAnApostrophe(String text) {
        assertThat(ChangesCsv.guarded(text)).isEqualTo("'" + text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "ap-3", "1=1", "'quoted'", "a+b"})
    void otherTextStaysAsItIs(String text) {
        assertThat(ChangesCsv.guarded(text)).isEqualTo(text);
    }

    @Test
    void everyFieldIsARowAndReadsBack() throws IOException {
        StringWriter out = new StringWriter();
        ChangesCsv csv = new ChangesCsv(out, Map.of(5L, "Orrin & Vale, \"Books\""));
        csv.add(entry(
                new FieldChange("note", "one\r\ntwo", "=cmd|' /C calc'!A0"), new FieldChange("name", "", "a;b,c")));
        csv.add(entry());
        csv.end();
        // RFC 4180 section 2: rows end with CRLF; the mark before them is U+FEFF
        assertThat(out.toString()).startsWith("\uFEFFtime_utc,entry,").endsWith("\r\n");
        List<CSVRecord> rows = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(out.toString().substring(1)))
                .getRecords();
        assertThat(rows).hasSize(3);
        assertThat(rows.get(0).get("old")).isEqualTo("one\r\ntwo");
        assertThat(rows.get(0).get("new")).isEqualTo("'=cmd|' /C calc'!A0");
        assertThat(rows.get(1).get("new")).isEqualTo("a;b,c");
        assertThat(rows.get(2).get("field")).isEmpty();
        assertThat(rows).allSatisfy(row -> {
            assertThat(row.get("time_utc")).isEqualTo("2026-03-04T12:00:00Z");
            assertThat(row.get("customer")).isEqualTo("Orrin & Vale, \"Books\"");
            assertThat(row.get("who")).isEqualTo("mara");
            assertThat(row.get("name")).isEqualTo("'-ap");
        });
    }

    private static AuditEntry entry(FieldChange... changes) {
        return new AuditEntry(
                9L,
                Instant.parse("2026-03-04T12:00:00Z"),
                MARA,
                "changed",
                new Subject("device", 3L, "-ap", 5L),
                List.of(changes));
    }
}
