package org.roundsman.snmp.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The rule is the project's own: facts are read hourly, and what went away is looked for sooner at first. */
class SurveyPaceTest {

    private static final long HOUR = Duration.ofHours(1).toNanos();
    private static final long MINUTE = Duration.ofMinutes(1).toNanos();

    private final DeviceRecord record = new DeviceRecord(null);

    /** Minutes from one survey to the next, asked each half minute. */
    private List<Long> surveys(long from, int count) {
        List<Long> minutes = new ArrayList<>();
        long last = from;
        for (long now = from; minutes.size() < count; now += MINUTE / 2) {
            if (record.surveyIsDue(now)) {
                minutes.add((now - last) / MINUTE);
                record.surveyed(true, now, HOUR);
                last = now;
            }
        }
        return minutes;
    }

    @Test
    void surveysAreHourlyUntilSomethingIsGoneAndThenSoonAndMoreAndMoreSeldom() {
        record.surveyed(true, 0, HOUR);
        assertThat(surveys(0, 2)).containsExactly(60L, 60L);
        record.lacks(121 * MINUTE);
        assertThat(surveys(121 * MINUTE, 9)).containsExactly(0L, 1L, 2L, 4L, 8L, 16L, 32L, 60L, 60L);
    }

    @Test
    void aSurveyThatWasNotAnsweredInFullIsRepeatedAsBefore() {
        record.lacks(0);
        record.surveyed(false, 0, HOUR);
        assertThat(record.surveyIsDue(MINUTE - 1)).isFalse();
        assertThat(record.surveyIsDue(MINUTE)).isTrue();
    }
}
