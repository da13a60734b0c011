package org.roundsman.alarms;

import java.util.Set;

/**
 * Alarms were raised, changed, cleared, judged or handled, and it is committed. Comes on the thread of whoever made the change,
 * which holds no lock any more; hand over at once.
 */
public record AlarmsChanged(Set<Long> alarmIds) {

    public AlarmsChanged {
        alarmIds = Set.copyOf(alarmIds);
    }
}
