package org.roundsman.web.alarms;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.alarms.QualityReport;
import org.roundsman.alarms.QualityReport.Floods;
import org.roundsman.alarms.QualityReport.Load;
import org.roundsman.alarms.QualityReport.Mix;
import org.roundsman.alarms.QualityReport.Noise;
import org.roundsman.alarms.QualityReport.Stale;

/** Shares of priorities of ISA-18.2 and EEMUA 191: about 80 % low, 15 % medium, 5 % high; from memory. */
class QualityViewTest {

    private static List<GuideLine> mix(double low, double medium, double high) {
        Instant to = Instant.parse("2026-11-25T00:00:00Z");
        QualityReport report = new QualityReport(
                to.minusSeconds(7 * 86_400),
                to,
                1,
                new Load(100, 14, 0.6, 0.1, 3, 0, 0, 0),
                new Floods(List.of(), 0),
                List.of(),
                List.of(),
                0.3,
                new Noise(List.of(), 0),
                new Stale(List.of(), 0),
                new Mix(low, medium, high));
        return new QualityView(report, 7, 1).mix();
    }

    @ParameterizedTest
    @CsvSource({
        "0.50,  0.20,  0.30,  below the guide,  above the guide,  above the guide",
        "0.80,  0.15,  0.05,  within the guide, within the guide, within the guide",
        "0.797, 0.151, 0.052, within the guide, within the guide, within the guide",
        "1.00,  0.00,  0.00,  within the guide, within the guide, within the guide",
        "0.79,  0.16,  0.05,  below the guide,  above the guide,  within the guide",
        "0.84,  0.10,  0.06,  within the guide, within the guide, above the guide"
    })
    void eachSeverityIsJudgedByItsShare(
            double low, double medium, double high, String ofLow, String ofMajor, String ofCritical) {
        assertThat(mix(low, medium, high)).extracting(GuideLine::standing).containsExactly(ofLow, ofMajor, ofCritical);
    }

    @Test
    void whatIsAwayFromItsShareStandsOut() {
        assertThat(mix(0.50, 0.20, 0.30)).allMatch(GuideLine::over);
        assertThat(mix(0.80, 0.15, 0.05)).noneMatch(GuideLine::over);
        assertThat(mix(0.50, 0.20, 0.30).get(2))
                .extracting(GuideLine::figure, GuideLine::guide)
                .containsExactly("30\u00a0%", "about 5\u00a0%");
    }
}
