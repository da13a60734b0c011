package org.roundsman.claims;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Condition;
import org.roundsman.readings.Availability;
import org.roundsman.readings.Span;

/** What the readings of a unit say, in sentences. Figures worked out by hand. */
class FailureTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final Instant FROM = Instant.parse("2026-03-01T00:00:00Z");
    private static final Instant TO = Instant.parse("2026-03-11T00:00:00Z");

    private static Span span(String from, String to, Condition condition) {
        return new Span(Instant.parse(from), Optional.ofNullable(to).map(Instant::parse), condition, Optional.empty());
    }

    private static List<String> sentences(List<Span> spans, List<Instant> restarts) {
        Availability availability = Availability.of(spans, FROM, TO, TO, List.of());
        return new Failure(FROM, TO, false, availability, spans, restarts, List.of(), 0).sentences(BERLIN);
    }

    @Test
    void silenceAndRestartsAreToldInSiteTime() {
        // 240 h, of which 24 h silent: 216 / 240 = 90 %
        List<String> lines = sentences(
                List.of(
                        span("2026-03-01T00:00:00Z", "2026-03-10T00:00:00Z", Condition.ANSWERING),
                        span("2026-03-10T00:00:00Z", null, Condition.SILENT)),
                List.of(Instant.parse("2026-03-05T11:30:00Z")));
        assertThat(lines)
                .containsSequence(
                        "Looked at: 2026-03-01 01:00 to 2026-03-11 01:00, time zone Europe/Berlin.",
                        "Availability: 90.00 % of the time that counts, silent for 1 day 0 h.",
                        "Silent once:",
                        "· 2026-03-10 01:00 for 1 day 0 h, and it goes on",
                        "Restarted once:",
                        "· 2026-03-05 12:30",
                        "No alarm was raised.");
    }

    @Test
    void ofManyTimesTheLatestAreToldAndTheOthersCounted() {
        List<Instant> restarts = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            restarts.add(FROM.plus(Duration.ofHours(i)));
        }
        List<String> lines = sentences(List.of(), restarts);
        assertThat(lines).contains("Restarted 30 times:", "· and 18 more, earlier", "· 2026-03-02 06:00");
        assertThat(lines).contains("Availability: no figure, nothing of this time counts.", "It was never silent.");
        assertThat(lines).hasSizeLessThan(25);
    }

    @Test
    void aSilenceThatOutlastsTheUnitIsToldUntilItLeft() {
        for (String end : new String[] {null, "2026-03-12T00:00:00Z"}) {
            List<Span> spans = List.of(span("2026-03-10T00:00:00Z", end, Condition.SILENT));
            Availability availability = Availability.of(spans, FROM, TO, TO, List.of());
            assertThat(new Failure(FROM, TO, true, availability, spans, List.of(), List.of(), 0).sentences(BERLIN))
                    .contains("· 2026-03-10 01:00 for 1 day 0 h, until the unit left");
        }
    }
}
