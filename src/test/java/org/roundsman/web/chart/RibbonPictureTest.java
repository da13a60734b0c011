package org.roundsman.web.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.roundsman.readings.Ribbon;

class RibbonPictureTest {

    private static final Instant FROM = Instant.parse("2026-03-04T12:00:00Z");
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    private final List<Ribbon.Cell> cells = new ArrayList<>(Collections.nCopies(96, Ribbon.Cell.BLANK));

    private void cell(int at, double clients, OptionalDouble utilisation, double silent) {
        cells.set(at, new Ribbon.Cell(OptionalDouble.of(clients), utilisation, silent, 1));
    }

    private String picture() {
        return RibbonPicture.of(new Ribbon(FROM, cells), "s1", "Pier & Co", BERLIN)
                .getValue();
    }

    private static String path(String picture, String styleClass) {
        Matcher matcher = Pattern.compile("class=\"" + styleClass + "\"[^>]* d=\"([^\"]*)\"")
                .matcher(picture);
        return matcher.find() ? matcher.group(1) : "";
    }

    @Test
    void heightIsClientsToTheRowsOwnScaleAndTintIsUtilisation() {
        cell(0, 40, OptionalDouble.of(19.9), 0);
        cell(1, 20, OptionalDouble.of(20), 0);
        cell(95, 10, OptionalDouble.of(100), 0);
        assertThat(path(picture(), "u0")).isEqualTo("M0 28v-28h3v28z");
        assertThat(path(picture(), "u1")).isEqualTo("M4 28v-14h3v14z");
        assertThat(path(picture(), "u4")).isEqualTo("M380 28v-7h3v7z");
    }

    @Test
    void aFigureThatCouldNotBeReadHasATintOfItsOwn() {
        cell(0, 10, OptionalDouble.empty(), 0);
        assertThat(path(picture(), "ux")).isNotEmpty();
        assertThat(path(picture(), "u0")).isEmpty();
    }

    @Test
    void oneClientDoesNotLookLikeAFullHouse() {
        cell(0, 1, OptionalDouble.of(5), 0);
        assertThat(path(picture(), "u0")).isEqualTo("M0 28v-6h3v6z");
    }

    @Test
    void silenceHangsFromTheTopAsDeepAsItsShareAndIsAlwaysVisible() {
        cell(0, 0, OptionalDouble.empty(), 1);
        cell(1, 0, OptionalDouble.empty(), 0.02);
        assertThat(path(picture(), "silence")).isEqualTo("M0 0h4v28h-4zM4 0h4v6h-4z");
        assertThat(picture()).contains("fill=\"url(#hatch)\"");
    }

    @Test
    void unwatchedTimeIsBlankWithoutEvenABaseLine() {
        cell(3, 0, OptionalDouble.empty(), 0);
        assertThat(path(picture(), "base")).isEqualTo("M12 28h4v1h-4z");
    }

    /** WCAG 2.2, 1.1.1: a picture has words that say the same. */
    @Test
    void theDescriptionSaysWhatIsSeenInSiteTime() {
        cell(0, 40, OptionalDouble.of(30), 0);
        cell(4, 12, OptionalDouble.of(83.4), 0);
        cell(8, 0, OptionalDouble.empty(), 1);
        assertThat(picture())
                .contains("aria-labelledby=\"s1-t s1-d\"")
                .contains("Last 24 hours of Pier &amp; Co")
                .contains("Most clients: 40 around 13:00.")
                .contains("Highest channel utilisation: 83\u00a0% around 14:00.")
                .contains("Silence in 1 quarter hour.")
                .contains("Not watched for 23 h 15 min.");
    }
}
