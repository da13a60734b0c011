package org.roundsman.demo.agent;

import java.io.IOException;
import java.net.SocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.DatagramChannel;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.time.Clock;
import java.util.concurrent.atomic.LongAdder;

/** One thread that serves many agents, each on a socket of its own, and answers from the socket that was asked. */
final class AgentLoop implements Runnable {

    private static final System.Logger LOG = System.getLogger(AgentLoop.class.getName());

    /** An agent and what it serves. */
    record Seat(AgentState agent, Shape shape) {}

    private final Selector selector;
    private final Clock clock;
    private final LongAdder answers;
    private final Tables tables = new Tables();
    private final Conversation conversation = new Conversation();
    private final ByteBuffer received = ByteBuffer.allocateDirect(Limits.REQUEST_OCTETS);
    private final ByteBuffer sent = ByteBuffer.allocateDirect(Limits.REQUEST_OCTETS);
    private final byte[] request = new byte[Limits.REQUEST_OCTETS];
    private volatile boolean stopped;

    AgentLoop(Clock clock, LongAdder answers) throws IOException {
        this.selector = Selector.open();
        this.clock = clock;
        this.answers = answers;
    }

    /** Before the thread starts. */
    void seat(DatagramChannel channel, Seat seat) throws IOException {
        channel.configureBlocking(false);
        channel.register(selector, SelectionKey.OP_READ, seat);
    }

    @Override
    public void run() {
        try {
            while (!stopped) {
                selector.select(this::serve);
            }
        } catch (IOException e) {
            LOG.log(System.Logger.Level.ERROR, "the invented agents stopped: the selector failed", e);
        }
    }

    private void serve(SelectionKey key) {
        DatagramChannel channel = (DatagramChannel) key.channel();
        try {
            received.clear();
            SocketAddress asker = channel.receive(received);
            if (asker != null) {
                answer((Seat) key.attachment(), channel, asker);
            }
        } catch (IOException e) {
            // as with a lost datagram, the asker will ask again
            LOG.log(System.Logger.Level.DEBUG, "one request to an invented agent was lost", e);
        } catch (RuntimeException bug) {
            LOG.log(System.Logger.Level.ERROR, "an invented agent failed on a request", bug);
        }
    }

    private void answer(Seat seat, DatagramChannel channel, SocketAddress asker) throws IOException {
        received.flip();
        int length = received.remaining();
        received.get(request, 0, length);
        if (!seat.agent().look(clock.millis()) || seat.agent().loses()) {
            return;
        }
        Shape shape = tables.of(seat.agent(), seat.shape());
        if (!conversation.hear(seat.agent(), shape, request, length)) {
            return;
        }
        BerWriter reply = conversation.answer();
        sent.clear();
        sent.put(reply.buffer(), reply.position(), reply.length()).flip();
        channel.send(sent, asker);
        answers.increment();
    }

    /** Asks the thread to end and closes every socket. */
    void stop(Thread thread) throws IOException {
        stopped = true;
        selector.wakeup();
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        close();
    }

    /** Closes every socket; for a loop whose thread never started or has ended. */
    void close() throws IOException {
        for (SelectionKey key : selector.keys()) {
            key.channel().close();
        }
        selector.close();
    }
}
