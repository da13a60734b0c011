package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class ReportJsonTest {

    private final ReportJson json = new ReportJson();
    private final Report report = ReportExample.full();

    private static String text(byte[] octets) {
        return new String(octets, StandardCharsets.UTF_8);
    }

    @Test
    void whatIsWrittenIsReadBack() {
        for (Report one : List.of(report, ReportExample.nothingObserved())) {
            assertThat(json.read(json.write(one))).isEqualTo(one);
        }
    }

    @Test
    void theSameReportGivesTheSameOctets() {
        byte[] octets = json.write(report);
        assertThat(new ReportJson().write(ReportExample.full())).isEqualTo(octets);
        assertThat(json.write(json.read(octets)))
                .as("also when it was read back")
                .isEqualTo(octets);
    }

    /** Instants as RFC 3339, days and lengths of time as ISO 8601, money with its decimals, and nothing for what is not known. */
    @Test
    void itReadsPlainly() {
        String text = text(json.write(report));
        assertThat(text)
                .startsWith("{\n  \"form\" : 1,\n  \"subject\" : {\n    \"customerId\" : 7,")
                .contains("\"asOf\" : \"2026-11-01T05:00:00Z\"")
                .contains("\"from\" : \"2026-10-01\"")
                .contains("\"length\" : \"PT745H\"")
                .contains("\"GBP\" : 569.70")
                .contains("\"yearBefore\" : {\n      \"clients\" : null,")
                .contains("\"zone\" : \"Europe/London\"")
                .doesNotContain("\r")
                .doesNotContain("\"lost\"")
                .doesNotContain("\"met\"");
    }

    @Test
    void whatIsNoReportIsRefused() {
        String text = text(json.write(report));
        for (String broken : List.of(
                "", "{}", "[]", text.substring(0, text.length() / 2), text.replaceFirst("\"form\"", "\"shape\""))) {
            assertThatThrownBy(() -> json.read(broken.getBytes(StandardCharsets.UTF_8)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("no report: ");
        }
    }

    /** FIPS 180-4's example of one block: the letters abc. */
    @Test
    void printsAreThoseOfTheStandard() {
        assertThat(json.sha256("abc".getBytes(StandardCharsets.US_ASCII)))
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    private Report with(Watch whole, List<RadioFigures> radios, Equipment equipment) {
        return new Report(
                report.form(),
                report.subject(),
                report.asOf().plus(Duration.ofDays(3)),
                report.invented(),
                whole,
                report.service(),
                report.crowd(),
                report.sites(),
                report.outages(),
                radios,
                report.rooms(),
                equipment,
                report.handling(),
                report.work(),
                List.of());
    }

    private List<RadioFigures> firstRadio(OptionalDouble band, int quarters) {
        List<RadioFigures> radios = new ArrayList<>(report.radios());
        RadioFigures one = radios.get(0);
        radios.set(
                0,
                new RadioFigures(
                        one.siteId(),
                        one.site(),
                        one.deviceId(),
                        one.device(),
                        one.place(),
                        one.number(),
                        band,
                        one.utilisation(),
                        one.mean(),
                        one.busy(),
                        quarters,
                        one.expected(),
                        one.clients()));
        return radios;
    }

    @Test
    void aFigureThatWasObservedChangesThePrint() {
        String print = json.observed(report);
        int quarters = report.radios().get(0).quarters();
        OptionalDouble band = report.radios().get(0).band();
        Watch more = report.whole()
                .plus(new Watch(
                        Duration.ofSeconds(1),
                        Duration.ofSeconds(1),
                        Duration.ZERO,
                        Duration.ZERO,
                        Duration.ZERO,
                        Duration.ZERO));
        assertThat(json.observed(with(more, report.radios(), report.equipment())))
                .isNotEqualTo(print);
        assertThat(json.observed(with(report.whole(), firstRadio(band, quarters + 1), report.equipment())))
                .isNotEqualTo(print);
    }

    @Test
    void whatIsToldAsItStandsDoesNotChangeThePrint() {
        Equipment other =
                new Equipment(16, new TreeMap<>(), List.of(), new TreeMap<>(), List.of(), 0, new TreeMap<>(), 0);
        int quarters = report.radios().get(0).quarters();
        assertThat(json.observed(with(report.whole(), firstRadio(OptionalDouble.empty(), quarters), other)))
                .isEqualTo(json.observed(report));
    }
}
