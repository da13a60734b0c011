package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Bounds how often calendars are read: each is worked out of the whole fleet, and nobody signs in for it. Counts by minute,
 * of network addresses and of calendar addresses. Thread-safe; keeps at most {@value #MOST} of them.
 */
@ApplicationScoped
public class CalendarBrake {

    private static final Duration WINDOW = Duration.ofMinutes(1);
    private static final int MOST = 10_000;

    /** No calendar address is longer. */
    private static final int LONGEST = 64;

    private record Counted(Instant began, int count) {}

    private final Map<String, Counted> asked = new ConcurrentHashMap<>();
    private final WarrantyConfig config;
    private final Clock clock;

    @Inject
    CalendarBrake(WarrantyConfig config, Clock clock) {
        this.config = config;
        this.clock = clock;
    }

    /**
     * Counts a request.
     *
     * @param network address that it came from
     * @param secret of the calendar address
     * @return seconds to wait; 0 when it may be answered
     */
    public long waits(String network, String secret) {
        long all = count("n" + network, config.calendarAsks());
        return all > 0 || secret.length() > LONGEST ? all : count("c" + secret, config.calendarReads());
    }

    private long count(String key, int allowed) {
        Instant now = clock.instant();
        if (asked.size() >= MOST) {
            asked.values().removeIf(one -> !now.isBefore(one.began.plus(WINDOW)));
        }
        if (asked.size() >= MOST) {
            asked.clear();
        }
        Counted counted = asked.merge(
                key,
                new Counted(now, 1),
                (old, one) -> now.isBefore(old.began.plus(WINDOW)) ? new Counted(old.began, old.count + 1) : one);
        return counted.count <= allowed
                ? 0
                : Duration.between(now, counted.began.plus(WINDOW)).toSeconds() + 1;
    }
}
