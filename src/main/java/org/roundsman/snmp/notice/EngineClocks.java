package org.roundsman.snmp.notice;

import java.net.InetAddress;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The clocks of engines that send SNMPv3 traps, for which they are authoritative (RFC 3414 section 3.2, step 7 b). A first
 * message sets the clock: whoever replays one that we never saw, or saw before our last start, gets it in once. Kept by
 * address and engine ID, since cheap equipment repeats engine IDs. One thread.
 */
final class EngineClocks {

    /** Seconds of RFC 3414 section 2.2.3. */
    static final int WINDOW = 150;

    private static final int KEPT = 20_000;
    private static final long NANOS = 1_000_000_000L;

    private record Engine(InetAddress from, String id) {}

    /**
     * @param time the latest that was received
     * @param takenAt when, by our own nanoseconds
     */
    private record Clock(int boots, int time, long takenAt) {}

    private final Map<Engine, Clock> clocks = new LinkedHashMap<>(256, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Engine, Clock> eldest) {
            return size() > KEPT;
        }
    };

    /** Whether an authentic message with that clock is in time; if it is newer than all before, its clock is taken. */
    boolean isInTime(InetAddress from, String engineId, int boots, int time, long nanos) {
        Engine engine = new Engine(from, engineId);
        Clock known = clocks.get(engine);
        if (boots == Integer.MAX_VALUE) {
            return false;
        }
        if (known == null || boots > known.boots || boots == known.boots && time > known.time) {
            clocks.put(engine, new Clock(boots, time, nanos));
            return true;
        }
        long now = known.time + (nanos - known.takenAt) / NANOS;
        return boots == known.boots && time >= now - WINDOW;
    }
}
