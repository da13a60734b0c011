package org.roundsman.web.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Metric;
import org.roundsman.readings.Series;
import org.roundsman.readings.Span;

class ChartPictureTest {

    private static final Instant NOW = Instant.parse("2026-03-04T11:59:00Z");
    private static final Window WINDOW = Range.DAY.window(NOW, ZoneOffset.UTC);

    private static Series.Point point(int step, double mean) {
        return new Series.Point(WINDOW.from().plus(WINDOW.step().multipliedBy(step)), 15, mean - 5, mean, mean + 5);
    }

    private static String picture(List<Series.Point> points, List<Span> spans) {
        Series series = new Series(Metric.UTILISATION, 900, points);
        return ChartPicture.of(new Chart("c", "Radio 1: <utilisation>", "%", 1, 100, List.of(series), WINDOW, spans))
                .getValue();
    }

    private static long count(String text, String part) {
        return text.split(part, -1).length - 1L;
    }

    @Test
    void aLineIsBrokenWhereNothingWasMeasured() {
        String whole = picture(List.of(point(0, 50), point(1, 50), point(2, 50)), List.of());
        String broken = picture(List.of(point(0, 50), point(1, 50), point(4, 50), point(5, 50)), List.of());
        assertThat(count(line(whole), "M")).isEqualTo(1);
        assertThat(count(line(broken), "M")).isEqualTo(2);
    }

    @Test
    void aFigureOfHalfTheAxisLiesInTheMiddleOfThePlot() {
        // the plot reaches from 8 to 110 of the picture's height: half of it is 59
        assertThat(line(picture(List.of(point(0, 50), point(1, 50)), List.of())))
                .contains(" 59L");
    }

    private static String line(String picture) {
        return picture.replaceAll("(?s).*class=\"line\" d=\"([^\"]*)\".*", "$1");
    }

    @Test
    void silenceIsHatchedAndUnwatchedTimeGreyed() {
        Instant six = WINDOW.from().plusSeconds(21_600);
        String picture = picture(
                List.of(),
                List.of(
                        new Span(WINDOW.from().minusSeconds(5), Optional.of(six), Condition.SILENT, Optional.empty()),
                        new Span(six, Optional.empty(), Condition.UNWATCHED, Optional.empty())));
        assertThat(picture).contains("class=\"silence\" fill=\"url(#hatch)\" d=\"M36 8h64.5v102H36z\"");
        assertThat(picture).contains("class=\"blind\" d=\"M100.5 8h193.5v102H100.5z\"");
        assertThat(picture).contains("No figures in this time.");
    }

    @Test
    void titlesAreEscaped() {
        assertThat(picture(List.of(), List.of())).contains("Radio 1: &lt;utilisation&gt;");
    }
}
