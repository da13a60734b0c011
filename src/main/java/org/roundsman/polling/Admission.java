package org.roundsman.polling;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import java.util.Queue;

/**
 * Lets rounds start within two bounds: so many at one site, so many in all. What exceeds them waits in order; a site at its
 * bound does not hold up another. Thread-safe; never runs a round while holding its lock.
 */
final class Admission {

    private final int perSite;
    private final int inAll;
    private final Map<Long, Site> sites = new HashMap<>();
    /** Sites below their own bound that wait for the bound in all. */
    private final Queue<Site> ready = new ArrayDeque<>();

    private int running;
    private int waiting;

    Admission(int perSite, int inAll) {
        this.perSite = perSite;
        this.inAll = inAll;
    }

    private static final class Site {
        final long id;
        final Queue<Runnable> queue = new ArrayDeque<>();
        int running;
        boolean ready;

        Site(long id) {
            this.id = id;
        }
    }

    /** Starts the round now or when its turn comes, on the caller's thread or that of a {@link #leave}. */
    void enter(long siteId, Runnable round) {
        Runnable first;
        synchronized (this) {
            Site site = sites.computeIfAbsent(siteId, Site::new);
            site.queue.add(round);
            waiting++;
            offer(site);
            first = take();
        }
        if (first != null) {
            first.run();
        }
    }

    /** A round of this site has ended. */
    void leave(long siteId) {
        Runnable next;
        synchronized (this) {
            Site site = sites.get(siteId);
            site.running--;
            running--;
            offer(site);
            if (site.running == 0 && site.queue.isEmpty() && !site.ready) {
                sites.remove(siteId);
            }
            next = take();
        }
        if (next != null) {
            next.run();
        }
    }

    synchronized int running() {
        return running;
    }

    synchronized int waiting() {
        return waiting;
    }

    private void offer(Site site) {
        if (!site.ready && !site.queue.isEmpty() && site.running < perSite) {
            site.ready = true;
            ready.add(site);
        }
    }

    /** One ended round frees one place, and one entered round fills at most one: taking one at a time is enough. */
    private Runnable take() {
        if (running >= inAll) {
            return null;
        }
        Site site = ready.poll();
        if (site == null) {
            return null;
        }
        site.ready = false;
        Runnable round = site.queue.remove();
        waiting--;
        site.running++;
        running++;
        offer(site);
        return round;
    }
}
