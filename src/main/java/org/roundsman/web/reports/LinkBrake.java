package org.roundsman.web.reports;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Bounds how often one network address opens links to reports, right ones or wrong ones: nobody signs in for them. Counts by
 * minute; thread-safe; keeps at most {@value #MOST} addresses.
 */
@ApplicationScoped
class LinkBrake {

    /** Requests of one network address within a minute. */
    static final int ALLOWED = 60;

    private static final Duration WINDOW = Duration.ofMinutes(1);
    private static final int MOST = 10_000;

    private record Counted(Instant began, int count) {}

    private final Map<String, Counted> asked = new ConcurrentHashMap<>();
    private final Clock clock;

    LinkBrake(Clock clock) {
        this.clock = clock;
    }

    /**
     * Counts a request.
     *
     * @param network address that it came from
     * @return seconds to wait; 0 when it may be answered
     */
    long waits(String network) {
        Instant now = clock.instant();
        if (asked.size() >= MOST) {
            asked.values().removeIf(one -> !now.isBefore(one.began.plus(WINDOW)));
        }
        if (asked.size() >= MOST) {
            asked.clear();
        }
        Counted counted = asked.merge(
                network,
                new Counted(now, 1),
                (old, one) -> now.isBefore(old.began.plus(WINDOW)) ? new Counted(old.began, old.count + 1) : one);
        return counted.count <= ALLOWED
                ? 0
                : Duration.between(now, counted.began.plus(WINDOW)).toSeconds() + 1;
    }
}
