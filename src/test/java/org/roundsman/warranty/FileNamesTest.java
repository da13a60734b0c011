package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** OWASP ASVS 5.0, 5.3.2: the name of an upload names no place; and what a file is, its octets say. */
class FileNamesTest {

    @ParameterizedTest
    @CsvSource({
        "invoice.pdf, invoice.pdf",
        "../../etc/passwd, passwd.pdf",
        "'C:\\orders\\Rechnung Nr. 7.PDF', Rechnung Nr. 7.pdf",
        "'a\"b;c\r\nX: y.pdf', abcX y.pdf",
        "invoice.exe, invoice.pdf",
        ".., evidence.pdf",
        "'', evidence.pdf",
        "Lieferschein Müller 船.pdf, Lieferschein Müller 船.pdf"
    })
    void aNameIsShownAndNamesNoPlace(String uploaded, String kept) {
        assertThat(FileNames.safe(uploaded, EvidenceKind.PDF)).isEqualTo(kept);
    }

    @Test
    void signsThatTurnTheTextAreLeftOutAndLongNamesCut() {
        assertThat(FileNames.safe("a\u202Egnp.exe", EvidenceKind.PNG)).isEqualTo("agnp.png");
        assertThat(FileNames.safe("x".repeat(500), EvidenceKind.JPEG)).hasSize(104);
        assertThat(FileNames.safe(null, EvidenceKind.PDF)).isEqualTo("evidence.pdf");
    }

    /** PDF: ISO 32000-1, 7.5.2. PNG: RFC 2083, 12.11. JPEG: ITU-T T.81, B.1.1.3. */
    @Test
    void theFirstOctetsSayWhatItIs() {
        assertThat(EvidenceKind.of("%PDF-1.7\n".getBytes(StandardCharsets.US_ASCII)))
                .contains(EvidenceKind.PDF);
        byte[] png = {(byte) 137, 80, 78, 71, 13, 10, 26, 10, 0};
        assertThat(EvidenceKind.of(png)).contains(EvidenceKind.PNG);
        byte[] jpeg = {(byte) 0xff, (byte) 0xd8, (byte) 0xff, (byte) 0xe0};
        assertThat(EvidenceKind.of(jpeg)).contains(EvidenceKind.JPEG);
        assertThat(EvidenceKind.of("<html>%PDF-".getBytes(StandardCharsets.US_ASCII)))
                .isEmpty();
        assertThat(EvidenceKind.of("MZ\u0090".getBytes(StandardCharsets.ISO_8859_1)))
                .isEmpty();
        assertThat(EvidenceKind.of(new byte[0])).isEmpty();
    }
}
