package org.roundsman.traps;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * The addresses of hosts. Names are looked up in the background, anew every five minutes; until the first answer a name
 * has none, and one that cannot be looked up any more keeps what it had. Thread-safe.
 */
final class HostAddresses implements AutoCloseable {

    private static final Duration KEPT = Duration.ofMinutes(5);
    private static final int AT_ONCE = 4;

    private final Clock clock;
    private final Runnable news;
    private final Map<String, Known> names = new ConcurrentHashMap<>();
    private final Set<String> underWay = ConcurrentHashMap.newKeySet();
    private final ExecutorService lookUps = Executors.newFixedThreadPool(AT_ONCE, task -> {
        Thread thread = new Thread(task, "trap-names");
        thread.setDaemon(true);
        return thread;
    });

    private record Known(List<InetAddress> addresses, Instant at) {}

    /** @param news told when a name got other addresses */
    HostAddresses(Clock clock, Runnable news) {
        this.clock = clock;
        this.news = news;
    }

    /** What is known now, never waiting for a name server. */
    List<InetAddress> of(String host) {
        if (isLiteral(host)) {
            return resolve(host);
        }
        Known known = names.get(host);
        if ((known == null || known.at.plus(KEPT).isBefore(clock.instant())) && underWay.add(host)) {
            lookUps.execute(() -> lookUp(host));
        }
        return known == null ? List.of() : known.addresses;
    }

    /** Forgets the names of hosts that are no more. */
    void keepOnly(Collection<String> hosts) {
        names.keySet().retainAll(Set.copyOf(hosts));
    }

    private void lookUp(String host) {
        List<InetAddress> found = resolve(host);
        Known before = names.get(host);
        List<InetAddress> now = found.isEmpty() && before != null ? before.addresses : found;
        names.put(host, new Known(now, clock.instant()));
        underWay.remove(host);
        if (before == null ? !now.isEmpty() : !before.addresses.equals(now)) {
            news.run();
        }
    }

    private static boolean isLiteral(String host) {
        return host.indexOf(':') >= 0 || host.chars().allMatch(c -> c == '.' || c >= '0' && c <= '9');
    }

    private static List<InetAddress> resolve(String host) {
        try {
            return List.of(InetAddress.getAllByName(host));
        } catch (UnknownHostException e) {
            return List.of();
        }
    }

    @Override
    public void close() {
        lookUps.shutdownNow();
    }
}
