package org.roundsman.web.triage;

import java.util.List;

/**
 * One alarm with everything that is known about it; refreshes itself.
 *
 * @param seen what is seen, in a sentence
 * @param clock by which clock all its times are told
 * @param advice what to do
 * @param evidence step by step
 * @param explains the alarms that it explains
 * @param explainedBy id of the alarm that explains this one, 0 for none
 * @param before what changed in the hour before
 * @param history what happened with it; empty for those who are not told
 * @param picture the last 24 hours as a ribbon, SVG, or empty
 * @param of whose last 24 hours
 * @param openTime how the site stands this month, or empty
 * @param next what can be done next
 */
record AlarmPanel(
        TriageLine line,
        String seen,
        String clock,
        String advice,
        List<String> evidence,
        List<Explained> explains,
        long explainedBy,
        List<BeforeLine> before,
        List<HistoryLine> history,
        String picture,
        String of,
        String openTime,
        Next next) {

    /**
     * What can be done next.
     *
     * @param acts the reader may handle the alarm, and it is active
     * @param shelved it is on the shelf
     * @param visit there is somewhere to drive to
     * @param device the one to poll, 0 for none
     * @param name of that device
     */
    record Next(boolean acts, boolean shelved, boolean visit, long device, String name) {}

    /** An alarm that this one explains. */
    record Explained(long id, String severity, String title, String resource, String since) {}

    public boolean active() {
        return !line.severity().equals("cleared");
    }

    /** Whether it is about a device that is in the fleet. */
    public boolean aboutDevice() {
        return next.device() > 0 && line.where().link().startsWith("/devices/");
    }

    /** Changes with whatever is shown. */
    public String stamp() {
        return Integer.toHexString(hashCode());
    }
}
