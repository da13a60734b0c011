package org.roundsman.web.triage;

import org.roundsman.web.page.Faults;

/**
 * What the triage page shows.
 *
 * @param panel the alarm beside the list; null where there is none
 * @param opened somebody chose the alarm, so that a narrow screen shows it alone
 * @param form what was entered beside the alarm
 * @param faults what was wrong in it
 */
record Desk(TriageList list, AlarmPanel panel, boolean opened, ActForm form, Faults faults) {

    public boolean hasPanel() {
        return panel != null;
    }

    public boolean empty() {
        return list.lines().isEmpty();
    }
}
