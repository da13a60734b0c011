package org.roundsman.snmp;

import java.io.IOException;
import java.lang.System.Logger.Level;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.DatagramChannel;
import org.roundsman.snmp.notice.Intake;
import org.roundsman.snmp.notice.SourceGate;

/**
 * Receives traps and informs of SNMP v1, v2c and v3 at one UDP port, and answers informs. One thread receives, checks
 * and hands on; nothing that arrives ends it.
 */
public final class NotificationReceiver implements AutoCloseable {

    private static final System.Logger LOG = System.getLogger(NotificationReceiver.class.getName());
    private static final int SOCKET_BUFFER = 4 << 20;
    private static final int LARGEST_DATAGRAM = 65_535;

    private final DatagramChannel channel;
    private final Intake intake;
    private final SourceGate gate;
    private final NotificationListener listener;
    private final Thread thread;
    private final ByteBuffer incoming = ByteBuffer.allocateDirect(LARGEST_DATAGRAM);

    private NotificationReceiver(
            DatagramChannel channel, Intake intake, SourceGate gate, NotificationListener listener) {
        this.channel = channel;
        this.intake = intake;
        this.gate = gate;
        this.listener = listener;
        this.thread = new Thread(this::run, "snmp-notifications");
        thread.setDaemon(true);
    }

    /**
     * Opens the port and begins to receive.
     *
     * @param at local address and port; port 0 takes a free one
     * @throws IOException when the port cannot be had
     */
    public static NotificationReceiver open(
            InetSocketAddress at,
            EngineIdentity own,
            NotificationSenders senders,
            NotificationListener listener,
            NotificationLimits limits)
            throws IOException {
        DatagramChannel channel = DatagramChannel.open();
        try {
            channel.setOption(StandardSocketOptions.SO_RCVBUF, SOCKET_BUFFER);
            channel.bind(at);
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
        NotificationReceiver receiver = new NotificationReceiver(
                channel, new Intake(own, senders, listener, System::nanoTime), new SourceGate(limits), listener);
        receiver.thread.start();
        return receiver;
    }

    /** Where it receives. */
    public InetSocketAddress address() throws IOException {
        return (InetSocketAddress) channel.getLocalAddress();
    }

    /**
     * Does the slow step from password to key on the caller's thread, so that the first message of a user does not hold up
     * others. Safe from any thread.
     */
    public void prepare(SnmpAccess access) {
        intake.prepare(access);
    }

    private void run() {
        while (channel.isOpen()) {
            try {
                receive();
            } catch (ClosedChannelException e) {
                LOG.log(Level.DEBUG, "The port of notifications was closed");
            } catch (IOException e) {
                // such as an ICMP error about an answer of ours: it says nothing about the next message
                LOG.log(Level.DEBUG, "A fault of the port of notifications", e);
            } catch (RuntimeException | Error e) {
                // An Error too: without this thread, nothing would be received any more.
                LOG.log(Level.ERROR, "A fault while receiving notifications; going on", e);
            }
        }
    }

    private void receive() throws IOException {
        incoming.clear();
        InetSocketAddress from = (InetSocketAddress) channel.receive(incoming);
        if (from == null) {
            return;
        }
        listener.received();
        if (!gate.admits(from.getAddress(), System.nanoTime())) {
            listener.dropped(from.getAddress());
            return;
        }
        byte[] datagram = new byte[incoming.flip().remaining()];
        incoming.get(datagram);
        byte[] answer = intake.take(datagram, from.getAddress());
        if (answer != null) {
            channel.send(ByteBuffer.wrap(answer), from);
        }
    }

    @Override
    public void close() {
        try {
            channel.close();
            thread.join(2_000);
        } catch (IOException e) {
            LOG.log(Level.WARNING, "The port of notifications could not be closed: {0}", e.getMessage());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
