package org.roundsman.snmp.session;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpAccess.Level;

/**
 * Exchanges SNMP messages over a few UDP sockets; agents are spread over them and stay with theirs. Nothing here
 * blocks a receiving thread: name look-ups and the slow step from password to key run elsewhere. Thread-safe.
 */
public final class Session implements Exchange, AutoCloseable {

    private static final int NAMES_AT_ONCE = 4;
    private static final long ADDRESS_KEPT_NANOS = Duration.ofMinutes(5).toNanos();

    private final List<Loop> loops = new ArrayList<>();
    private final PasswordKeys keys = new PasswordKeys();
    private final int tries;
    private final ExecutorService aside = Executors.newFixedThreadPool(NAMES_AT_ONCE, task -> {
        Thread thread = new Thread(task, "snmp-aside");
        thread.setDaemon(true);
        return thread;
    });

    private Session(int tries) {
        this.tries = tries;
    }

    /**
     * Opens the sockets.
     *
     * @param retries further tries of a request, 0 or more
     */
    public static Session open(int sockets, Duration timeout, int retries) throws IOException {
        Session session = new Session(retries + 1);
        try {
            for (int i = 0; i < sockets; i++) {
                session.loops.add(new Loop("snmp-" + (i + 1), timeout.toNanos()));
            }
        } catch (IOException e) {
            session.close();
            throw e;
        }
        return session;
    }

    /** What this session will remember of an agent. */
    public Peer peer(Agent agent) {
        int place = Math.floorMod(31 * agent.host().hashCode() + agent.port(), loops.size());
        return new Peer(agent, loops.get(place), dialect(agent.access()));
    }

    private Dialect dialect(SnmpAccess access) {
        if (access instanceof SnmpAccess.User user) {
            return new UserDialect(user, keys, System::nanoTime);
        }
        return new CommunityDialect((SnmpAccess.Community) access);
    }

    /**
     * Makes sure that the agent can be asked, then runs a task on its thread.
     *
     * @param task gets null when the agent can be asked, else why not
     */
    @Override
    public void meet(Peer peer, Consumer<Outcome> task) {
        peer.loop.execute(() -> {
            boolean fresh = peer.address != null && System.nanoTime() - peer.addressTakenAt < ADDRESS_KEPT_NANOS;
            if (fresh && keysKnown(peer)) {
                task.accept(null);
            } else {
                prepare(peer, task);
            }
        });
    }

    private void prepare(Peer peer, Consumer<Outcome> task) {
        try {
            aside.execute(() -> {
                boolean usable = keysUsable(peer);
                InetAddress[] found = resolve(peer.agent().host());
                peer.loop.execute(() -> {
                    if (usable) {
                        settle(peer, found, task);
                    } else {
                        task.accept(Outcome.WRONG_DIGEST);
                    }
                });
            });
        } catch (RejectedExecutionException e) {
            task.accept(Outcome.NO_REPLY);
        }
    }

    private static void settle(Peer peer, InetAddress[] found, Consumer<Outcome> task) {
        if (found.length > 0) {
            peer.address = new InetSocketAddress(found[0], peer.agent().port());
            peer.addressTakenAt = System.nanoTime();
        }
        // A name server that is down for a while does not make a known address wrong.
        task.accept(peer.address == null ? Outcome.ADDRESS_UNKNOWN : null);
    }

    private static InetAddress[] resolve(String host) {
        try {
            return InetAddress.getAllByName(host);
        } catch (UnknownHostException e) {
            return new InetAddress[0];
        }
    }

    private boolean keysKnown(Peer peer) {
        if (!(peer.agent().access() instanceof SnmpAccess.User user) || user.level() == Level.NO_AUTH) {
            return true;
        }
        return keys.knows(user.auth(), user.authPassword())
                && (user.level() == Level.AUTH || keys.knows(user.auth(), user.privPassword()));
    }

    /** Learns the keys; false when a password that the level asks for is empty. */
    private boolean keysUsable(Peer peer) {
        if (keysKnown(peer)) {
            return true;
        }
        SnmpAccess.User user = (SnmpAccess.User) peer.agent().access();
        boolean hidden = user.level() == Level.AUTH_PRIV;
        if (isEmpty(user.authPassword()) || hidden && isEmpty(user.privPassword())) {
            return false;
        }
        keys.key(user.auth(), user.authPassword());
        if (hidden) {
            keys.key(user.auth(), user.privPassword());
        }
        return true;
    }

    private static boolean isEmpty(String password) {
        return password == null || password.isEmpty();
    }

    /** Asks an agent that was met; to be called on its thread, where the listener also hears. */
    @Override
    public void ask(Peer peer, Request request, Consumer<Reply> listener) {
        peer.loop.ask(new Pending(peer, request, false, tries, listener));
    }

    /** As {@link #ask}, but signed only, though the agent's level asks for encryption. Never for anything secret. */
    @Override
    public void askSigned(Peer peer, Request request, Consumer<Reply> listener) {
        peer.loop.ask(new Pending(peer, request, true, tries, listener));
    }

    @Override
    public void close() throws IOException {
        aside.shutdownNow();
        for (Loop loop : loops) {
            loop.close();
        }
    }
}
