package org.roundsman.snmp.notice;

import java.net.InetAddress;
import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.snmp.NotificationLimits;

/** Bounds how many messages of one address are looked at. Keeps the latest 10,000 addresses. One thread. */
public final class SourceGate {

    private static final int KEPT = 10_000;
    private static final double NANOS = 1e9;

    private final NotificationLimits limits;
    private final Map<InetAddress, Bucket> buckets = new LinkedHashMap<>(256, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<InetAddress, Bucket> eldest) {
            return size() > KEPT;
        }
    };

    private static final class Bucket {
        double left;
        long filledAt;
    }

    public SourceGate(NotificationLimits limits) {
        this.limits = limits;
    }

    /** Whether a message of that address may be looked at now. */
    public boolean admits(InetAddress source, long nanos) {
        Bucket bucket = buckets.get(source);
        if (bucket == null) {
            bucket = new Bucket();
            bucket.left = limits.burst();
            bucket.filledAt = nanos;
            buckets.put(source, bucket);
        }
        bucket.left = Math.min(limits.burst(), bucket.left + (nanos - bucket.filledAt) / NANOS * limits.perSecond());
        bucket.filledAt = nanos;
        if (bucket.left < 1) {
            return false;
        }
        bucket.left--;
        return true;
    }
}
