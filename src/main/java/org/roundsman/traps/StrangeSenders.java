package org.roundsman.traps;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.snmp.NotificationRefusal;

/**
 * Counts messages that were not let in, by address and reason, in memory only. Of 1,000 addresses at most; the quietest
 * ones make room and are counted together. Thread-safe.
 */
@ApplicationScoped
public class StrangeSenders {

    static final int KEPT = 1_000;

    private final Map<Key, Count> counts = new LinkedHashMap<>(64, 0.75f, true);
    private long others;

    private record Key(String address, NotificationRefusal reason) {}

    private static final class Count {
        int version;
        long messages;
        Instant first;
        Instant last;
    }

    /**
     * Messages of one address that were not let in for one reason.
     *
     * @param version the last one's: 1, 2 (v2c), 3, or 0 where it was not known
     */
    public record Line(
            String address, NotificationRefusal reason, int version, long messages, Instant first, Instant last) {}

    synchronized void count(String address, int version, NotificationRefusal reason, Instant now) {
        Key key = new Key(address, reason);
        Count count = counts.get(key);
        if (count == null) {
            makeRoom();
            count = new Count();
            count.first = now;
            counts.put(key, count);
        }
        count.version = version;
        count.messages++;
        count.last = now;
    }

    private void makeRoom() {
        if (counts.size() >= KEPT) {
            var quietest = counts.entrySet().iterator();
            others += quietest.next().getValue().messages;
            quietest.remove();
        }
    }

    /** The latest first, at most so many. */
    public synchronized List<Line> latest(int most) {
        return counts.entrySet().stream()
                .map(e -> new Line(
                        e.getKey().address,
                        e.getKey().reason,
                        e.getValue().version,
                        e.getValue().messages,
                        e.getValue().first,
                        e.getValue().last))
                .sorted(Comparator.comparing(Line::last).reversed())
                .limit(most)
                .toList();
    }

    /** How many addresses with their reasons are told apart. */
    public synchronized int size() {
        return counts.size();
    }

    /** Messages of those that made room. */
    public synchronized long others() {
        return others;
    }
}
