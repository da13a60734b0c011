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
 * same time, and a window takes as many as there is time for. For one list and one thread.
 */
public final class Fitting {

    private final LongFunction<List<Running>> windows;
    private final Duration each;
    private final Instant now;
    private final Map<Long, List<Room>> rooms = new HashMap<>();

    /** A window with the time that is left in it. */
    private static final class Room {
        private final Running window;
        private Duration left;

        Room(Running window, Instant now) {
            this.window = window;
            this.left = Duration.between(window.from().isBefore(now) ? now : window.from(), window.to());
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
        List<Room> of = rooms.computeIfAbsent(item.place().siteId(), site -> windows.apply(site).stream()
                .map(window -> new Room(window, now))
                .toList());
        int left = item.devices().size();
        List<Fit> fits = new ArrayList<>();
        for (Room room : of) {
            int some = (int) Math.min(left, room.left.toMillis() / each.toMillis());
            if (some > 0) {
                room.left = room.left.minus(each.multipliedBy(some));
                left -= some;
                Running window = room.window;
                fits.add(new Fit(window.windowId(), window.title(), window.from(), window.to(), some));
            }
        }
        return item.fitted(fits, left);
    }
}
