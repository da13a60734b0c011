package org.roundsman.web.device;

import java.util.Arrays;
import java.util.List;
import org.roundsman.web.chart.Range;

/** All charts of a device's page, and the links to other lengths of time. */
record ChartSet(List<RangeLink> ranges, List<ChartGroup> groups) {

    /** A length of time to choose. */
    record RangeLink(String word, String link, boolean here) {}

    static ChartSet of(long deviceId, Range chosen, List<ChartGroup> groups) {
        return new ChartSet(
                Arrays.stream(Range.values())
                        .map(range -> new RangeLink(
                                range.word(),
                                "/devices/" + deviceId + "?range=" + range.word() + "#charts",
                                range == chosen))
                        .toList(),
                groups);
    }
}
