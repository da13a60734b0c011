package org.roundsman.alarms;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which status changes are worth telling to somebody who wants to hear of a severity and worse (RFC 8632,
 * notify-severity-level): every change to that severity or worse, the change that falls below it, and the clear. One
 * deviation: RFC 8632 always tells of a clear; here an episode of which nothing was told is not told to be over.
 */
public final class NotifyLevel {

    private NotifyLevel() {}

    /**
     * What is worth telling, in order.
     *
     * @param changes of one alarm, oldest first, from a raise on; several episodes may follow each other
     */
    public static List<AlarmChange> noteworthy(List<AlarmChange> changes, Severity level) {
        List<AlarmChange> told = new ArrayList<>();
        boolean above = false;
        boolean toldOfEpisode = false;
        for (AlarmChange change : changes) {
            Optional<Severity> severity = change.severity();
            boolean now = severity.filter(s -> s.atLeast(level)).isPresent();
            boolean fallsBelow = severity.isPresent() && above && !now;
            boolean over = severity.isEmpty() && toldOfEpisode;
            if (now || fallsBelow || over) {
                told.add(change);
            }
            toldOfEpisode = severity.isPresent() && (toldOfEpisode || now);
            above = now;
        }
        return told;
    }
}
