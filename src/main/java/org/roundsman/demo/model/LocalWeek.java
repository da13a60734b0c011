package org.roundsman.demo.model;

import java.time.Instant;
import java.time.ZoneId;
import java.time.zone.ZoneRules;

/** Turns epoch time into local time of a zone; remembers the offset of the quarter hour asked last. One thread at a time. */
final class LocalWeek {

    /** 1970-01-01 was a Thursday. */
    private static final long DAYS_FROM_MONDAY = 3;

    private final ZoneRules rules;
    private long quarter = Long.MIN_VALUE;
    private long offsetSeconds;

    LocalWeek(ZoneId zone) {
        this.rules = zone.getRules();
    }

    /** Seconds since the local Monday, midnight. */
    double secondOfWeek(long epochMilli) {
        long asked = Math.floorDiv(epochMilli, Counters.QUARTER_MILLIS);
        if (asked != quarter) {
            // zones change their offset at whole quarter hours only
            offsetSeconds = rules.getOffset(Instant.ofEpochMilli(epochMilli)).getTotalSeconds();
            quarter = asked;
        }
        long local = epochMilli + (offsetSeconds + DAYS_FROM_MONDAY * 86_400) * 1000;
        return Math.floorMod(local, Rhythm.WEEK_SECONDS * 1000L) / 1000.0;
    }
}
