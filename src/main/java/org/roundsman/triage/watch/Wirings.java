package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.roundsman.topology.SiteWiring;

/**
 * The wiring of sites in trouble, kept until something of it was read again, or for a minute: a place that a person set, or
 * one that was worked out anew, is seen by then. Used by one thread.
 */
final class Wirings {

    private static final Duration KEPT = Duration.ofMinutes(1);

    private final Tools tools;
    private final Map<Long, Kept> kept = new HashMap<>();
    private Map<Long, Instant> readAt = Map.of();

    private record Kept(SiteWiring wiring, Instant loaded, Instant readAt) {}

    Wirings(Tools tools) {
        this.tools = tools;
    }

    /** These are the sites that are in trouble now: what is kept of others is dropped. */
    void only(Collection<Long> sites) {
        kept.keySet().retainAll(sites);
        readAt = tools.fleet().wiringReadAt(sites);
    }

    SiteWiring of(long siteId, Instant now) {
        Instant read = readAt.getOrDefault(siteId, Instant.MIN);
        Kept found = kept.get(siteId);
        if (found == null
                || !found.readAt().equals(read)
                || !found.loaded().plus(KEPT).isAfter(now)) {
            found = new Kept(tools.wiring().apply(siteId), now, read);
            kept.put(siteId, found);
        }
        return found.wiring();
    }
}
