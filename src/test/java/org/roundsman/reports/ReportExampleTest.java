package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

/** The invented reports hold what real ones do: others rely on it. */
class ReportExampleTest {

    private final Report report = ReportExample.full();

    @Test
    void theMonthIsAnHourLongerThanThirtyOneDays() {
        // Europe/London, October 2026: IANA time zone database, by java.time
        assertThat(report.sites()).allSatisfy(site -> {
            assertThat(site.length()).isEqualTo(Duration.ofHours(745));
            assertThat(site.days().stream().map(SiteFigures.Day::length).reduce(Duration.ZERO, Duration::plus))
                    .isEqualTo(site.length());
        });
    }

    @Test
    void theSilenceOfTheOutagesIsThatOfTheirSites() {
        assertThat(report.sites()).allSatisfy(site -> assertThat(report.outages().stream()
                        .filter(outage -> outage.siteId() == site.siteId())
                        .map(Outage::silence)
                        .reduce(Duration.ZERO, Duration::plus))
                .isEqualTo(site.whole().silent()));
    }

    @Test
    void oneTargetWasMissed() {
        assertThat(report.sites()).extracting(site -> site.met().orElseThrow()).containsExactly(false, true, true);
        assertThat(report.whole().coverage().getAsDouble()).isBetween(0.95, 0.99);
    }

    @Test
    void theDarkOneHasNoFigure() {
        Report dark = ReportExample.nothingObserved();
        assertThat(dark.whole().share()).isEmpty();
        assertThat(dark.whole().coverage()).hasValue(0);
        assertThat(dark.sites().get(0).met()).isEmpty();
    }
}
