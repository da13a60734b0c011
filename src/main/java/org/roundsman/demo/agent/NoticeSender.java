package org.roundsman.demo.agent;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.StandardProtocolFamily;
import java.nio.ByteBuffer;
import java.nio.channels.DatagramChannel;
import java.time.Clock;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.LongAdder;
import org.roundsman.demo.Faults;

/** Looks once a second at what has changed, and sends what is to be told, each from its device's own address. */
public final class NoticeSender implements AutoCloseable {

    private static final System.Logger LOG = System.getLogger(NoticeSender.class.getName());

    private final InetSocketAddress receiver;
    private final Clock clock;
    private final NoticeWatch watch;
    private final NoticeWriter writer = new NoticeWriter();
    private final LongAdder sent = new LongAdder();
    private final ScheduledExecutorService thread;

    private NoticeSender(Faults faults, Clock clock, InetSocketAddress receiver) {
        this.receiver = receiver;
        this.clock = clock;
        this.watch = new NoticeWatch(faults, clock.millis(), this::send);
        this.thread = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread made = new Thread(work, "invented-notices");
            made.setDaemon(true);
            return made;
        });
    }

    public static NoticeSender start(Faults faults, Clock clock, InetSocketAddress receiver) {
        NoticeSender sender = new NoticeSender(faults, clock, receiver);
        sender.thread.scheduleWithFixedDelay(sender::look, 1, 1, TimeUnit.SECONDS);
        return sender;
    }

    private void look() {
        try {
            watch.look(clock.millis());
        } catch (RuntimeException bug) {
            // the next look goes on
            LOG.log(System.Logger.Level.ERROR, "what the invented agents would tell could not be worked out", bug);
        }
    }

    private void send(AgentState agent, Notice notice) {
        try (DatagramChannel channel = DatagramChannel.open(StandardProtocolFamily.INET)) {
            channel.bind(new InetSocketAddress(agent.device.host(), 0));
            channel.send(ByteBuffer.wrap(writer.write(agent, notice)), receiver);
            sent.increment();
        } catch (IOException e) {
            // a trap that is lost stays lost: nobody answers to one
            LOG.log(System.Logger.Level.DEBUG, "a notification of an invented agent was lost", e);
        }
    }

    /** Notifications sent since the start. */
    public long sent() {
        return sent.sum();
    }

    /** Ends it; when this returns, nothing is sent any more. */
    @Override
    public void close() {
        thread.shutdownNow();
        try {
            if (!thread.awaitTermination(10, TimeUnit.SECONDS)) {
                LOG.log(System.Logger.Level.WARNING, "the notifications of the invented agents did not end in 10 s");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
