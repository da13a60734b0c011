package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import org.roundsman.system.MinuteBrake;

/**
 * Bounds how often calendars are read: each is worked out of the whole fleet, and nobody signs in for it. Counts by minute,
 * of network addresses and of calendar addresses. Thread-safe.
 */
@ApplicationScoped
public class CalendarBrake {

    /** No calendar address is longer. */
    private static final int LONGEST = 64;

    private final WarrantyConfig config;
    private final MinuteBrake brake;

    @Inject
    CalendarBrake(WarrantyConfig config, Clock clock) {
        this.config = config;
        this.brake = new MinuteBrake(clock);
    }

    /**
     * Counts a request.
     *
     * @param network address that it came from
     * @param secret of the calendar address
     * @return seconds to wait; 0 when it may be answered
     */
    public long waits(String network, String secret) {
        long all = brake.waits("n" + network, config.calendarAsks());
        return all > 0 || secret.length() > LONGEST ? all : brake.waits("c" + secret, config.calendarReads());
    }
}
