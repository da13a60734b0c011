package org.roundsman.readings.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Reading;
import org.roundsman.readings.sql.Sql;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;

/**
 * Finds restarts in stored readings: an uptime that cannot have run on since the reading before. It is looked for here
 * and not while visiting, since what was stored outlives a restart of our own. Readings that come late find nothing.
 * Used by one thread.
 */
final class Restarts {

    /** TimeTicks (RFC 2578) begin anew after so many seconds: about 497 days. */
    private static final double WRAP_SECONDS = (1L << 32) / 100.0;

    private static final double TOLERANCE_SECONDS = 10;
    private static final double TOLERANCE_SHARE = 0.01;

    private final Map<Long, Seen> seen = new HashMap<>();
    private final Map<Long, Seen> fresh = new HashMap<>();

    /** The last uptime of a device; not a number where none is known. */
    record Seen(long at, double uptime) {
        static final Seen NOTHING = new Seen(Long.MIN_VALUE, Double.NaN);
    }

    /** Events for the restarts that these readings show, before they become the devices' last ones. */
    List<DeviceEvent> find(Connection connection, List<Reading> readings) throws SQLException {
        fresh.clear();
        List<Reading> told = readings.stream()
                .filter(reading -> reading.device().has(Metric.UPTIME))
                .sorted(Comparator.comparing(Reading::at))
                .toList();
        learn(connection, told.stream().map(Reading::deviceId).collect(Collectors.toSet()));
        List<DeviceEvent> events = new ArrayList<>();
        for (Reading reading : told) {
            Seen before = fresh.getOrDefault(reading.deviceId(), seen.getOrDefault(reading.deviceId(), Seen.NOTHING));
            Seen now = new Seen(reading.at().toEpochMilli(), reading.device().raw(Metric.UPTIME));
            if (now.at > before.at) {
                if (restarted(before, now)) {
                    events.add(event(reading.deviceId(), before, now));
                }
                fresh.put(reading.deviceId(), now);
            }
        }
        return events;
    }

    /** Takes over what the last batch brought, once it is committed. */
    void committed() {
        seen.putAll(fresh);
        fresh.clear();
    }

    void forget() {
        seen.clear();
        fresh.clear();
    }

    private void learn(Connection connection, Set<Long> devices) throws SQLException {
        List<Long> unknown =
                devices.stream().filter(id -> !seen.containsKey(id)).toList();
        if (unknown.isEmpty()) {
            return;
        }
        unknown.forEach(id -> seen.put(id, Seen.NOTHING));
        try (var statement = connection.prepareStatement("select device_id, last_answered_at, uptime from device_now"
                + " where device_id = any (?) and uptime is not null and last_answered_at is not null")) {
            statement.setArray(1, Sql.ids(connection, unknown));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    seen.put(row.getLong(1), new Seen(Sql.millis(row, "last_answered_at"), row.getDouble("uptime")));
                }
            }
        }
    }

    /**
     * Whether a device started again between two looks. An uptime that has run on, be it with wraps of its counter that we
     * did or did not see, is none; nor is one that fits neither way.
     */
    static boolean restarted(Seen before, Seen now) {
        if (Double.isNaN(before.uptime)) {
            return false;
        }
        double elapsed = (now.at - before.at) / 1000.0;
        double tolerance = TOLERANCE_SECONDS + TOLERANCE_SHARE * elapsed;
        double off = Math.abs(before.uptime + elapsed - now.uptime) % WRAP_SECONDS;
        return Math.min(off, WRAP_SECONDS - off) > tolerance && now.uptime <= elapsed + tolerance;
    }

    private static DeviceEvent event(long deviceId, Seen before, Seen now) {
        long began = Math.max(before.at + 1, now.at - (long) (now.uptime * 1000));
        return DeviceEvent.change(
                deviceId,
                Instant.ofEpochMilli(began),
                EventKind.RESTARTED,
                "Restarted",
                "had run for " + words(before.uptime),
                "running for " + words(now.uptime) + " when next seen");
    }

    private static String words(double seconds) {
        Duration length = Duration.ofSeconds((long) seconds);
        if (length.toMinutes() < 1) {
            return length.toSeconds() + " s";
        }
        if (length.toHours() < 1) {
            return length.toMinutes() + " min";
        }
        return length.toDays() < 1
                ? length.toHours() + " h " + length.toMinutesPart() + " min"
                : length.toDays() + (length.toDays() == 1 ? " day " : " days ") + length.toHoursPart() + " h";
    }
}
