package org.roundsman.web.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Collections;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.readings.Ribbon;
import org.roundsman.readings.SiteRow;
import org.roundsman.web.page.State;

/** How long a site's trouble has gone on is known of its longest only: words of our own. */
class SiteLineTest {

    private static final Instant NOW = Instant.parse("2026-11-25T09:30:00Z");
    private static final Instant SINCE = Instant.parse("2026-11-25T05:06:00Z");

    private static State state(int silent, int refusing, int otherTrouble) {
        boolean trouble = silent + refusing + otherTrouble > 0;
        return SiteLine.state(
                new SiteRow(
                        1,
                        "House",
                        2,
                        "Hotel Brackwater",
                        "Europe/Berlin",
                        40,
                        40 - silent - refusing,
                        silent,
                        refusing,
                        0,
                        3,
                        otherTrouble,
                        trouble ? Optional.of(SINCE) : Optional.empty(),
                        OptionalInt.empty(),
                        Optional.empty(),
                        new Ribbon(SINCE, Collections.nCopies(Ribbon.CELLS, Ribbon.Cell.BLANK))),
                NOW);
    }

    @ParameterizedTest
    @CsvSource({
        "1,  0, 0, 1 of 40 silent,    for 4 h 24 min",
        "26, 0, 0, 26 of 40 silent,   the longest for 4 h 24 min",
        "40, 0, 0, all 40 silent,     the longest for 4 h 24 min",
        "26, 1, 0, 26 of 40 silent,   trouble for 4 h 24 min",
        "26, 0, 1, 26 of 40 silent,   trouble for 4 h 24 min",
        "1,  0, 1, 1 of 40 silent,    trouble for 4 h 24 min",
        "0,  1, 0, 1 of 40 refusing,  for 4 h 24 min",
        "0,  3, 0, 3 of 40 refusing,  the longest for 4 h 24 min",
        "0,  3, 2, 3 of 40 refusing,  trouble for 4 h 24 min",
        "0,  0, 1, switch or gateway, for 4 h 24 min",
        "0,  0, 2, switch or gateway, the longest for 4 h 24 min"
    })
    void theTimeIsSaidOfThoseWhoseItIs(int silent, int refusing, int others, String text, String since) {
        State state = state(silent, refusing, others);
        assertThat(state.text()).isEqualTo(text);
        assertThat(state.since()).isEqualTo(since);
        assertThat(state.at()).isEqualTo(SINCE.toString());
    }

    @Test
    void whereAllAnswerNoTimeIsSaid() {
        assertThat(state(0, 0, 0).text()).isEqualTo("all 40 answering");
        assertThat(state(0, 0, 0).since()).isEmpty();
    }
}
