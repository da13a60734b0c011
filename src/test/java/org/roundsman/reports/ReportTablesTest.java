package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReportTablesTest {

    private static final String MARK = "\uFEFF";

    private final Report report = ReportExample.full();

    private static String csv(Object... cells) {
        List<String> columns =
                IntStream.range(0, cells.length).mapToObj(n -> "c" + n).toList();
        return ReportTables.csv(new ReportTable("any", columns, List.of(Arrays.asList(cells))));
    }

    /** The one record below the names of the columns. */
    private static String fields(Object... cells) {
        String text = csv(cells);
        return text.substring(text.indexOf("\r\n") + 2);
    }

    private ReportTable table(String key) {
        return ReportTables.find(report, key).orElseThrow();
    }

    private static List<CSVRecord> records(ReportTable table) {
        String text = ReportTables.csv(table);
        assertThat(text).startsWith(MARK);
        try (CSVParser parser = CSVParser.parse(
                new StringReader(text.substring(1)),
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** RFC 4180, from memory: records end in CRLF, inner quotes are doubled, what holds a separator or a break is quoted. */
    @Test
    void fieldsAreQuotedAsTheStandardSays() {
        assertThat(csv("x", "y")).isEqualTo(MARK + "c0,c1\r\nx,y\r\n");
        assertThat(fields("x", "a,b")).isEqualTo("x,\"a,b\"\r\n");
        assertThat(fields("x", "say \"hi\"")).isEqualTo("x,\"say \"\"hi\"\"\"\r\n");
        assertThat(fields("x", "", "y")).isEqualTo("x,,y\r\n");
        assertThat(fields("x", null, "y")).isEqualTo("x,,y\r\n");
        assertThat(fields("x", "x\r\ny")).isEqualTo("x,\"x\r\ny\"\r\n");
    }

    /** OWASP ASVS 5.0, 1.2.10: what begins like a formula has an apostrophe before it. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {"=1+1|'=1+1", "+49|'+49", "-60|'-60", "@sum|'@sum", "plain|plain", "1=1|1=1"})
    void textIsNoFormula(String text, String guarded) {
        assertThat(fields("x", text)).isEqualTo("x," + guarded + "\r\n");
    }

    @Test
    void whatAlreadyHasApostrophesGetsOneMore() {
        assertThat(fields("x", "'=1")).isEqualTo("x,''=1\r\n");
        assertThat(fields("x", "\tx")).startsWith("x,").contains("'\tx");
        assertThat(fields("x", "\0x")).startsWith("x,").contains("'\0x");
    }

    @Test
    void numbersAreWrittenInFull() {
        assertThat(fields("x", 0.0001, 12_345_678.5, 10.0, 0.0, 7, 4711L, new BigDecimal("569.70")))
                .isEqualTo("x,0.0001,12345678.5,10,0,7,4711,569.70\r\n");
        assertThat(fields("x", LocalDate.of(2026, 10, 1), Instant.parse("2026-10-06T09:12:00Z")))
                .isEqualTo("x,2026-10-01,2026-10-06T09:12:00Z\r\n");
    }

    @Test
    void everyTableIsThereWithOneValueForEachColumn() {
        for (Report one : List.of(report, ReportExample.nothingObserved())) {
            List<ReportTable> tables = ReportTables.of(one);
            assertThat(tables)
                    .extracting(ReportTable::key)
                    .containsExactly(
                            "sites",
                            "days",
                            "outages",
                            "clients-by-hour",
                            "radios",
                            "rooms",
                            "firmware",
                            "warranty",
                            "alarms",
                            "work",
                            "recommendations");
            for (ReportTable table : tables) {
                assertThat(table.columns()).doesNotHaveDuplicates().allMatch(name -> name.matches("[a-z0-9-]+"));
                assertThat(table.rows()).as(table.key()).allSatisfy(row -> assertThat(row)
                        .hasSameSizeAs(table.columns()));
                assertThat(records(table)).hasSameSizeAs(table.rows());
            }
        }
        assertThat(ReportTables.of(report)).noneMatch(table -> table.rows().isEmpty());
        assertThat(ReportTables.find(report, "prices")).isEmpty();
    }

    @Test
    void sitesTellTheTargetAndWhatWasSeen() {
        List<CSVRecord> sites = records(table("sites"));
        assertThat(sites)
                .extracting(site -> site.get("site"))
                .containsExactly("Canal Bridge", "Hill Top", "Market Row");
        CSVRecord canal = sites.get(0);
        assertThat(canal.get("length-seconds")).isEqualTo(String.valueOf(745 * 3600));
        // 95 minutes of 230 watched service hours
        assertThat(canal.get("service-availability-percent")).isEqualTo("99.3116");
        assertThat(canal.get("target-met")).isEqualTo("no");
        assertThat(canal.get("allowed-seconds")).isEqualTo(String.valueOf(72 * 60));
        assertThat(canal.get("silent-seconds")).isEqualTo(String.valueOf(5 * 95 * 60));
        // 36.5 of 745 hours
        assertThat(canal.get("coverage-percent")).isEqualTo("95.1007");
        assertThat(canal.get("since")).isEmpty();
        assertThat(sites.get(1).get("since")).isEqualTo("2026-10-05");
    }

    @Test
    void daysAreAllThereAndTheLongOneHasTwentyFiveHours() {
        List<CSVRecord> days = records(table("days"));
        assertThat(days).hasSize(3 * 31);
        assertThat(days)
                .filteredOn(day -> day.get("day").equals("2026-10-25"))
                .extracting(day -> day.get("length-seconds"))
                .containsOnly(String.valueOf(25 * 3600));
        assertThat(days)
                .filteredOn(day ->
                        day.get("site").equals("Hill Top") && day.get("day").equals("2026-10-04"))
                .extracting(day -> day.get("availability-percent"))
                .containsExactly("");
    }

    @Test
    void outagesAreInUniversalTime() {
        CSVRecord line = records(table("outages")).get(0);
        assertThat(line.get("cause")).isEqualTo("UPLINK");
        // 10:12 in London in summer
        assertThat(line.get("from")).isEqualTo("2026-10-06T09:12:00Z");
        assertThat(line.get("length-seconds")).isEqualTo("5700");
        assertThat(line.get("silence-seconds")).isEqualTo("28500");
        assertThat(line.get("person-minutes")).isEqualTo("1330");
        assertThat(line.get("whole-site")).isEqualTo("yes");
        assertThat(line.get("alarm")).isEqualTo("4711");
    }

    @Test
    void clientsComeForAllSitesAndForEach() {
        List<CSVRecord> hours = records(table("clients-by-hour"));
        assertThat(hours).hasSize(4 * (24 + 168));
        assertThat(hours).filteredOn(hour -> hour.get("site").isEmpty()).hasSize(24 + 168);
        // 67 people at the three clinics in the middle of a weekday, which is at ten
        assertThat(hours)
                .filteredOn(
                        hour -> hour.get("site").isEmpty() && hour.get("hour").equals("10"))
                .filteredOn(hour ->
                        hour.get("weekday").equals("1") || hour.get("weekday").isEmpty())
                .extracting(hour -> hour.get("all"))
                .containsExactly("67", "67");
    }

    @Test
    void adviceHasItsCost() {
        List<CSVRecord> advice = records(table("recommendations"));
        assertThat(advice).hasSameSizeAs(report.recommendations());
        CSVRecord renew = advice.get(5);
        assertThat(renew.get("number")).isEqualTo("6");
        assertThat(renew.get("kind")).isEqualTo("RENEW_COVER");
        assertThat(renew.get("day")).isEqualTo("2026-12-20");
        assertThat(renew.get("cost") + renew.get("currency")).isEqualTo("569.70GBP");
        assertThat(advice.get(0).get("cost")).isEmpty();
    }
}
