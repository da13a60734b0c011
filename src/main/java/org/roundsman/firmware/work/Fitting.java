package org.roundsman.firmware.work;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongFunction;
import org.roundsman.firmware.WorkItem;
import org.roundsman.firmware.WorkItem.Fit;
import org.roundsman.planned.Running;

/**
 * Fits work into the windows of each site, in the order of the list: devices are changed one after the other, each takes the
 * same time, and a window takes as many as there is time for. Time in which windows overlap is there once. For one list and
 * one thread.
 */
public final class Fitting {

    private final LongFunction<List<Running>> windows;
    private final Duration each;
    private final Instant now;
    private final Map<Long, SiteTime> sites = new HashMap<>();

    /** The windows of a site, and up to when its time is taken. */
    private static final class SiteTime {
        private final List<Running> windows;
        private Instant taken;

        SiteTime(List<Running> windows, Instant now) {
            this.windows = windows;
            this.taken = now;
        }

        /** How many devices a window takes in the time that nothing has taken yet. */
        int take(Running window, int most, Duration each) {
            Instant begin = window.from().isBefore(taken) ? taken : window.from();
            if (!begin.isBefore(window.to())) {
                return 0;
            }
            int some = (int) Math.min(most, Duration.between(begin, window.to()).toMillis() / each.toMillis());
            if (some > 0) {
                taken = begin.plus(each.multipliedBy(some));
            }
            return some;
        }
    }

    /**
     * @param windows those to come of a site, by its id, the earliest first
     * @param each time for one device
     */
    public Fitting(LongFunction<List<Running>> windows, Duration each, Instant now) {
        this.windows = windows;
        this.each = each;
        this.now = now;
    }

    public WorkItem fit(WorkItem item) {
        SiteTime time = sites.computeIfAbsent(item.place().siteId(), site -> new SiteTime(windows.apply(site), now));
        int left = item.devices().size();
        List<Fit> fits = new ArrayList<>();
        for (Running window : time.windows) {
            int some = time.take(window, left, each);
            if (some > 0) {
                left -= some;
                fits.add(new Fit(window.windowId(), window.title(), window.from(), window.to(), some));
            }
        }
        return item.fitted(fits, left);
    }
}
