package org.roundsman.traps;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;

/**
 * How many notifications of each device become events of their own: some at once, then one now and then. What is beyond
 * that is summed, and becomes one event after a while. Thread-safe.
 */
final class Allowances {

    private final int burst;
    private final Duration onePer;
    private final Duration sumEvery;
    private final Map<Long, Allowance> byDevice = new HashMap<>();

    private static final class Allowance {
        double left;
        Instant filledAt;
        long summed;
        Instant summedSince;
        NoticeTitle last;
    }

    /**
     * @param burst so many at once
     * @param onePer one more in that time
     * @param sumEvery how long is summed before it becomes an event
     */
    Allowances(int burst, Duration onePer, Duration sumEvery) {
        this.burst = burst;
        this.onePer = onePer;
        this.sumEvery = sumEvery;
    }

    /** Whether this notification becomes an event of its own; if not, it is summed. */
    synchronized boolean admits(long device, NoticeTitle title, Instant now) {
        Allowance allowance = byDevice.computeIfAbsent(device, id -> full(now));
        double gained = (double) Duration.between(allowance.filledAt, now).toMillis() / Math.max(1, onePer.toMillis());
        allowance.left = Math.min(burst, allowance.left + Math.max(0, gained));
        allowance.filledAt = now;
        if (allowance.left >= 1) {
            allowance.left--;
            return true;
        }
        allowance.summedSince = allowance.summed == 0 ? now : allowance.summedSince;
        allowance.summed++;
        allowance.last = title;
        return false;
    }

    private Allowance full(Instant now) {
        Allowance allowance = new Allowance();
        allowance.left = burst;
        allowance.filledAt = now;
        return allowance;
    }

    /** The sums that are due, or all of them, as events; they begin anew. Devices that are quiet are forgotten. */
    synchronized List<NoticeWriter.Waiting> sums(Instant now, boolean all) {
        List<NoticeWriter.Waiting> events = new ArrayList<>();
        Iterator<Map.Entry<Long, Allowance>> each = byDevice.entrySet().iterator();
        while (each.hasNext()) {
            Map.Entry<Long, Allowance> entry = each.next();
            Allowance allowance = entry.getValue();
            if (allowance.summed > 0) {
                if (all || !now.isBefore(allowance.summedSince.plus(sumEvery))) {
                    events.add(new NoticeWriter.Waiting(event(entry.getKey(), allowance, now), "", allowance.last));
                    allowance.summed = 0;
                }
            } else if (now.isAfter(allowance.filledAt.plus(onePer.multipliedBy(burst)))) {
                each.remove();
            }
        }
        return events;
    }

    private static DeviceEvent event(long device, Allowance allowance, Instant now) {
        long minutes = Math.max(
                1, Math.round(Duration.between(allowance.summedSince, now).toSeconds() / 60.0));
        String title = String.format(
                Locale.ENGLISH,
                "%,d more %s in %d %s",
                allowance.summed,
                allowance.summed == 1 ? "notification" : "notifications",
                minutes,
                minutes == 1 ? "minute" : "minutes");
        return new DeviceEvent(
                device, now, EventKind.NOTIFICATION, title, "", "", "The last of them: " + allowance.last.text());
    }
}
