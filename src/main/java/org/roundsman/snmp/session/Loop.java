package org.roundsman.snmp.session;

import java.io.IOException;
import java.lang.System.Logger.Level;
import java.net.InetSocketAddress;
import java.net.PortUnreachableException;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.DatagramChannel;
import java.nio.channels.SelectionKey;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.session.Tries.Try;

/**
 * The one thread that sends, receives and times out everything that goes through one socket. What belongs to an agent
 * is touched by this thread only, so that nothing here or above needs a lock.
 */
final class Loop implements AutoCloseable {

    private static final System.Logger LOG = System.getLogger(Loop.class.getName());
    private static final int DATAGRAMS_AT_ONCE = 256;

    private final Sockets sockets = new Sockets();
    private final Tries tries;
    private final Thread thread;
    private final Queue<Runnable> tasks = new ConcurrentLinkedQueue<>();
    private final AtomicBoolean woken = new AtomicBoolean();
    private volatile boolean open = true;

    Loop(String name, long timeoutNanos) throws IOException {
        tries = new Tries(timeoutNanos);
        thread = new Thread(this::run, name);
        thread.setDaemon(true);
        thread.start();
    }

    /** Runs a task on this loop's thread, soon. */
    void execute(Runnable task) {
        tasks.add(task);
        if (Thread.currentThread() != thread && woken.compareAndSet(false, true)) {
            sockets.selector().wakeup();
        }
    }

    /** Sends a request; its listener hears on this thread, later, how it ended. To be called on this thread. */
    void ask(Pending pending) {
        send(pending);
    }

    private void run() {
        while (open) {
            try {
                turn();
            } catch (IOException | RuntimeException | Error e) {
                // An Error too: without this thread, every device on its sockets would stay unvisited.
                LOG.log(Level.ERROR, "A fault while exchanging SNMP messages; going on", e);
            }
        }
    }

    private void turn() throws IOException {
        woken.set(false);
        if (tasks.isEmpty()) {
            sockets.selector().select(this::ready, tries.waitMillis(System.nanoTime()));
        } else {
            sockets.selector().selectNow(this::ready);
        }
        for (Runnable task = tasks.poll(); task != null; task = tasks.poll()) {
            task.run();
        }
        long now = System.nanoTime();
        for (Try late = tries.nextExpired(now); late != null; late = tries.nextExpired(now)) {
            timeOut(late.pending(), now);
        }
    }

    private void timeOut(Pending pending, long now) {
        pending.timeouts++;
        if (pending.triesLeft > 0) {
            send(pending);
        } else {
            pending.peer.dialect.heardNothing();
            fail(pending, pending.silence(), now);
        }
    }

    private void send(Pending pending) {
        long now = System.nanoTime();
        pending.triesLeft--;
        pending.sent++;
        Try attempt = tries.begin(pending, now);
        try {
            sockets.send(pending, pending.peer.dialect.encode(pending.request, attempt.number(), pending.open));
        } catch (PortUnreachableException e) {
            execute(() -> fail(pending, Outcome.PORT_CLOSED, now));
        } catch (IOException | RuntimeException e) {
            pending.remark("not sent: " + e);
            execute(() -> fail(pending, Outcome.NO_REPLY, now));
        }
    }

    private void ready(SelectionKey key) {
        DatagramChannel source = (DatagramChannel) key.channel();
        try {
            byte[] datagram = sockets.receive(source);
            for (int i = 0; datagram != null && i < DATAGRAMS_AT_ONCE; i++) {
                take(datagram, sockets.from());
                datagram = sockets.receive(source);
            }
        } catch (PortUnreachableException e) {
            if (key.attachment() instanceof Pending pending) {
                fail(pending, Outcome.PORT_CLOSED, System.nanoTime());
            }
        } catch (ClosedChannelException e) {
            LOG.log(Level.DEBUG, "A socket was closed while it was read", e);
        } catch (IOException e) {
            LOG.log(Level.WARNING, "Cannot receive SNMP replies: {0}", e.getMessage());
        }
    }

    private void take(byte[] datagram, InetSocketAddress from) {
        int number = Envelope.numberOf(datagram);
        Try attempt = tries.find(number);
        if (attempt == null) {
            stray(number, from);
            return;
        }
        Pending pending = attempt.pending();
        if (!pending.done && from.equals(pending.peer.address)) {
            judge(attempt, decode(pending, datagram));
        } else if (!pending.done) {
            pending.remark("a reply came from " + from.getAddress().getHostAddress() + " port " + from.getPort()
                    + " instead, and was ignored");
        }
    }

    private static Verdict decode(Pending pending, byte[] datagram) {
        try {
            return pending.peer.dialect.decode(datagram, pending.open);
        } catch (IOException | RuntimeException e) {
            return new Verdict.Unusable("a reply could not be read: " + e.getMessage());
        }
    }

    /** A datagram that answers nothing: its agent talks, though not sensibly. */
    private void stray(int number, InetSocketAddress from) {
        Pending pending = tries.waitingFor(from);
        if (pending != null) {
            pending.sawUnreadable();
            pending.remark(
                    number == Envelope.UNREADABLE
                            ? "a reply that is no SNMP message was ignored"
                            : "a reply with a number that was not asked for was ignored");
        }
    }

    private void judge(Try attempt, Verdict verdict) {
        Pending pending = attempt.pending();
        long now = System.nanoTime();
        if (verdict instanceof Verdict.Answer answer) {
            finish(pending);
            pending.answered(answer.pdu(), now - attempt.sentAt(), now);
        } else if (verdict instanceof Verdict.Again again) {
            pending.remark(again.remark());
            askAgain(attempt, again.cause(), now);
        } else if (verdict instanceof Verdict.Refused refused) {
            fail(pending, refused.cause(), now);
        } else if (verdict instanceof Verdict.Unusable unusable) {
            pending.sawUnreadable();
            pending.remark(unusable.remark());
        }
    }

    private void askAgain(Try attempt, Outcome cause, long now) {
        Pending pending = attempt.pending();
        if (pending.mayAskAgain(cause)) {
            tries.answer(attempt);
            pending.triesLeft++;
            send(pending);
        } else {
            fail(pending, cause, now);
        }
    }

    private void fail(Pending pending, Outcome outcome, long now) {
        if (!pending.done) {
            finish(pending);
            pending.failed(outcome, now);
        }
    }

    private void finish(Pending pending) {
        tries.finish(pending);
        try {
            sockets.release(pending);
        } catch (IOException e) {
            LOG.log(Level.DEBUG, "A socket could not be closed", e);
        }
    }

    /** Twice, also from two threads, is as good as once. */
    @Override
    public synchronized void close() throws IOException {
        if (!open) {
            return;
        }
        open = false;
        sockets.selector().wakeup();
        try {
            thread.join(2_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        sockets.close();
    }
}
