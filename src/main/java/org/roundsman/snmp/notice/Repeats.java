package org.roundsman.snmp.notice;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Remembers for a while which notifications were taken, so that one that comes again is not taken twice: an inform whose
 * answer got lost, a datagram that was doubled or is replayed. One thread.
 */
final class Repeats {

    private static final int KEPT = 8_192;

    private final long keptNanos;
    private final MessageDigest digest = sha256();
    /** In the order in which they were taken. */
    private final Map<Key, Long> taken = new LinkedHashMap<>();

    /**
     * What makes a notification the same: the sender and all of its content. A request number is not enough, since some
     * devices always send the same one.
     */
    record Key(long sender, ByteBuffer digest) {}

    /** @param keptNanos counted from when it was taken first, so that a device in a loop of restarts is heard again */
    Repeats(long keptNanos) {
        this.keptNanos = keptNanos;
    }

    Key key(long sender, byte[] content) {
        return new Key(sender, ByteBuffer.wrap(digest.digest(content)));
    }

    boolean isRepeated(Key key, long nanos) {
        forget(nanos);
        return taken.containsKey(key);
    }

    void take(Key key, long nanos) {
        taken.put(key, nanos);
    }

    private void forget(long nanos) {
        Iterator<Map.Entry<Key, Long>> oldest = taken.entrySet().iterator();
        while (oldest.hasNext()) {
            boolean late = nanos - oldest.next().getValue() > keptNanos;
            if (!late && taken.size() < KEPT) {
                return;
            }
            oldest.remove();
        }
    }

    int size() {
        return taken.size();
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
