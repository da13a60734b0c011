package org.roundsman.fleet.transfer;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.Charset;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.roundsman.fleet.ImportFile;
import org.roundsman.fleet.ImportUnreadable;
import org.roundsman.fleet.TransferTable;

class UploadTest {

    private static final String UMLAUT = "customer,note\r\nThistledown S\u00e4gewerk,invented\r\n";

    private static Upload read(byte[]... files) {
        return Upload.read(Stream.of(files).map(f -> new ImportFile("x.csv", f)).toList(), false);
    }

    private static Upload read(String text) {
        return read(text.getBytes(UTF_8));
    }

    /** Byte order marks: Unicode standard, section 23.8 (from memory). */
    static Stream<Arguments> encodings() {
        return Stream.of(
                Arguments.of(UMLAUT.getBytes(UTF_8), "UTF-8"),
                Arguments.of(("\uFEFF" + UMLAUT).getBytes(UTF_8), "UTF-8 with byte order mark"),
                Arguments.of(("\uFEFF" + UMLAUT).getBytes(UTF_16LE), "UTF-16"),
                Arguments.of(("\uFEFF" + UMLAUT).getBytes(UTF_16BE), "UTF-16"));
    }

    @ParameterizedTest
    @MethodSource("encodings")
    void theEncodingIsToldByTheFile(byte[] content, String encoding) {
        Upload upload = read(content);
        assertThat(upload.sources().get(0).encoding()).isEqualTo(encoding);
        assertThat(upload.lines().get(0).at("customer")).isEqualTo("Thistledown S\u00e4gewerk");
    }

    /** E4 alone is no UTF-8 (RFC 3629): named with its line, and read otherwise only where somebody said so. */
    @Test
    void whatIsNotUtf8IsNamedAndNeverGuessed() {
        byte[] western = UMLAUT.getBytes(ISO_8859_1);
        assertThatThrownBy(() -> read(western))
                .isInstanceOf(ImportUnreadable.class)
                .hasMessageContaining("Line 2")
                .hasMessageContaining("E4")
                .hasMessageContaining("Windows-1252");
        Upload chosen = Upload.read(List.of(new ImportFile("x.csv", western)), true);
        assertThat(chosen.sources().get(0).encoding()).isEqualTo("Windows-1252, as chosen");
        assertThat(chosen.lines().get(0).at("customer")).isEqualTo("Thistledown S\u00e4gewerk");
    }

    @Test
    void theChoiceLeavesFilesInUtf8Alone() {
        Upload chosen = Upload.read(List.of(new ImportFile("x.csv", UMLAUT.getBytes(UTF_8))), true);
        assertThat(chosen.sources().get(0).encoding()).isEqualTo("UTF-8");
        assertThat(chosen.lines().get(0).at("customer")).isEqualTo("Thistledown S\u00e4gewerk");
    }

    /** Windows-1252 has no character at 81 (hexadecimal); Unicode's mapping table CP1252.TXT, from memory. */
    @Test
    void octetsWithoutACharacterAreRefusedInWindowsToo() {
        byte[] odd = "customer\r\nx\u0081\r\n".getBytes(ISO_8859_1);
        assertThatThrownBy(() -> Upload.read(List.of(new ImportFile("x.csv", odd)), true))
                .hasMessageContaining("Line 2")
                .hasMessageContaining("81");
        byte[] euro = "customer\r\n\u20ac shop\r\n".getBytes(Charset.forName("windows-1252"));
        assertThat(Upload.read(List.of(new ImportFile("x.csv", euro)), true)
                        .lines()
                        .get(0)
                        .at("customer"))
                .isEqualTo("\u20ac shop");
    }

    @Test
    void halfACharacterOfUtf16IsRefused() {
        byte[] text = ("\uFEFF" + UMLAUT).getBytes(UTF_16LE);
        byte[] cut = java.util.Arrays.copyOf(text, text.length - 1);
        assertThatThrownBy(() -> read(cut)).hasMessageContaining("not UTF-16");
    }

    @ParameterizedTest
    @CsvSource({"',', comma", "';', semicolon", "'\t', tab"})
    void theSeparatorIsSeenInTheHeader(char separator, String name) {
        String text = "customer,site,time_zone\nA,B,\"x;,\t\"\n".replace(',', separator);
        Upload upload = read(text);
        assertThat(upload.sources().get(0).delimiter()).isEqualTo(name);
        assertThat(upload.sources().get(0).table()).isEqualTo(TransferTable.SITES);
        assertThat(upload.lines().get(0).at("site")).isEqualTo("B");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "customer|CUSTOMERS",
                "note,customer|CUSTOMERS",
                "Customer,Site,Time Zone|SITES",
                "customer,site,device,kind,host,credentials|DEVICES",
                "customer,serial|PURCHASES",
                "maker,model,kind|MODELS",
                "Maker,Model,Kind,List price,Currency,note|MODELS",
                "customer,serial,site,device,note|PURCHASES"
            })
    void theTableIsSeenInTheHeader(String header, TransferTable table) {
        assertThat(read(header + "\nA,B,C,D,E,F").sources().get(0).table()).isEqualTo(table);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "customer,site,timezone|no column “timezone” (is time_zone meant?)",
                "customer,site,timezone|column time_zone is missing",
                "customer,note,note|column note stands there twice",
                "customer,note,|column 3 has no name",
                "name,value|one of these headers",
                "customer,site,device,kind,address,credentials|column host is missing",
                "customer,site,device,kind,address,credentials|Columns of devices: customer, site, device, kind, host"
            })
    void aWrongHeaderIsNamedWithWhatWouldBeRight(String header, String words) {
        assertThatThrownBy(() -> read(header + "\n")).hasMessageContaining(words);
    }

    @Test
    void emptyRowsArePassedOverAndStillCounted() {
        Upload upload = read("customer,note\r\n\r\nA,1\r\n,\r\nB,2\r\n\r\n\r\n");
        assertThat(upload.lines()).extracting(Line::row).containsExactly(3, 5);
        assertThat(upload.sources().get(0).rows()).isEqualTo(2);
    }

    @Test
    void rowsCountAsInASpreadsheetAlsoAfterALineBreakWithinAField() {
        Upload upload = read("customer,note\r\nA,\"one\r\ntwo\"\r\nB,x\r\n");
        assertThat(upload.lines()).extracting(Line::row).containsExactly(2, 3);
        assertThat(upload.lines().get(0).at("note")).isEqualTo("one\r\ntwo");
    }

    @Test
    void tooFewAndTooManyFieldsAreRefusedRowByRow() {
        Upload upload = read("customer,note\nA\nB,x,y\nC,z\n");
        assertThat(upload.lines().get(0).result().faults().get(""))
                .contains("1 field,")
                .contains("the header has 2");
        assertThat(upload.lines().get(1).result().faults().get("")).contains("3 fields");
        assertThat(upload.lines().get(2).refused()).isFalse();
    }

    @Test
    void theCharacterNulIsRefusedWithItsColumn() {
        assertThat(read("customer,note\nA,x\0y\n").lines().get(0).result().faults())
                .containsOnlyKeys("note");
    }

    @ParameterizedTest
    @CsvSource({
        "'', file is empty",
        "'  \n', file is empty",
        "',,,\n\n', file is empty",
        "'\"\"', file is empty",
        "'\n\ncustomer', must be the first row",
        "customer, no row"
    })
    void aFileWithoutRowsSaysSo(String text, String words) {
        assertThatThrownBy(() -> read(text)).hasMessageContaining(words);
    }

    @Test
    void filesAreTakenInTheOrderOfTheirTables() {
        Upload upload = read(
                "customer,serial\nA,1\n".getBytes(UTF_8),
                "customer,site,time_zone\nA,B,C\n".getBytes(UTF_8),
                "customer\nA\n".getBytes(UTF_8));
        assertThat(upload.lines())
                .extracting(Line::table)
                .containsExactly(TransferTable.CUSTOMERS, TransferTable.SITES, TransferTable.PURCHASES);
    }

    /** OWASP ASVS 5.0, 5.3.2. */
    @ParameterizedTest
    @CsvSource({"../../x, x", "'C:\\temp\\sites.csv', sites.csv", "'', file without a name", "'a\nb', ab"})
    void aNameIsShownWithoutItsPath(String name, String shown) {
        assertThat(new ImportFile(name, new byte[0]).shownName()).isEqualTo(shown);
    }
}
