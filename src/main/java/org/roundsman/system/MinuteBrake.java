package org.roundsman.system;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Bounds how often something is asked for, counted by minute for each who asks. Thread-safe; keeps at most {@value #MOST} of them. */
public final class MinuteBrake {

    private static final Duration WINDOW = Duration.ofMinutes(1);
    private static final int MOST = 10_000;

    private record Counted(Instant began, int count) {}

    private final Map<String, Counted> asked = new ConcurrentHashMap<>();
    private final Clock clock;

    public MinuteBrake(Clock clock) {
        this.clock = clock;
    }

    /**
     * Counts a request.
     *
     * @param key who asks
     * @param allowed requests of one key within a minute
     * @return seconds to wait; 0 when it may be answered
     */
    public long waits(String key, int allowed) {
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
