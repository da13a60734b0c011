package org.roundsman.alarms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.alarms.Severity.CRITICAL;
import static org.roundsman.alarms.Severity.MAJOR;
import static org.roundsman.alarms.Severity.MINOR;
import static org.roundsman.alarms.Severity.WARNING;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Against the case that RFC 8632 gives in its module, at notify-severity-level. */
class NotifyLevelTest {

    private static final Severity CLEARED = null;

    /** Numbers of the changes, from 1, that are worth telling. */
    private static List<Long> told(Severity level, Severity... severities) {
        List<AlarmChange> changes = new ArrayList<>();
        for (Severity severity : severities) {
            changes.add(new AlarmChange(changes.size() + 1, 1, 1, Instant.EPOCH, Optional.ofNullable(severity), ""));
        }
        return NotifyLevel.noteworthy(changes, level).stream()
                .map(AlarmChange::id)
                .toList();
    }

    /** RFC 8632's own case: notices at T1, T2, T5, T6, T7 and T8. */
    @Test
    void theCaseOfTheStandard() {
        assertThat(told(MAJOR, MAJOR, MINOR, WARNING, MINOR, MAJOR, CRITICAL, MAJOR, CLEARED))
                .containsExactly(1L, 2L, 5L, 6L, 7L, 8L);
    }

    /** This project's own choice, not from the standard. */
    @Test
    void nobodyHearsThatIsOverOfWhatTheyNeverHeard() {
        assertThat(told(MAJOR, WARNING, MINOR, CLEARED)).isEmpty();
        assertThat(told(MAJOR, MAJOR, CLEARED, WARNING, CLEARED)).containsExactly(1L, 2L);
        assertThat(told(MAJOR, MAJOR, MINOR, CLEARED)).containsExactly(1L, 2L, 3L);
    }

    @Test
    void theLowestLevelHearsEverything() {
        assertThat(told(Severity.INDETERMINATE, WARNING, MINOR, CLEARED, MAJOR, CLEARED))
                .containsExactly(1L, 2L, 3L, 4L, 5L);
    }
}
