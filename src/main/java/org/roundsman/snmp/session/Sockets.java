package org.roundsman.snmp.session;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.DatagramChannel;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;

/** The UDP sockets of one loop: one for all agents, and short-lived ones for the last try of a request. One thread. */
final class Sockets implements AutoCloseable {

    private static final int SOCKET_BUFFER = 4 << 20;
    private static final int LARGEST_DATAGRAM = 65_535;
    private static final int MOST_CONNECTED = 128;

    private final Selector selector;
    private final DatagramChannel channel;
    private final ByteBuffer incoming = ByteBuffer.allocateDirect(LARGEST_DATAGRAM);
    private int connected;
    private InetSocketAddress from;

    Sockets() throws IOException {
        selector = Selector.open();
        channel = DatagramChannel.open();
        channel.setOption(StandardSocketOptions.SO_RCVBUF, SOCKET_BUFFER);
        channel.setOption(StandardSocketOptions.SO_SNDBUF, SOCKET_BUFFER);
        channel.bind(null);
        channel.configureBlocking(false);
        channel.register(selector, SelectionKey.OP_READ);
    }

    Selector selector() {
        return selector;
    }

    /**
     * Sends a try. The last try of a request that was not answered goes through a socket of its own that is connected:
     * only such a socket is told of ICMP "port unreachable".
     *
     * @throws java.net.PortUnreachableException when that is known already
     */
    void send(Pending pending, byte[] datagram) throws IOException {
        boolean last = pending.triesLeft == 0 && pending.timeouts > 0;
        if (last && pending.connected == null && connected < MOST_CONNECTED) {
            connect(pending);
        }
        if (pending.connected == null) {
            channel.send(ByteBuffer.wrap(datagram), pending.peer.address);
        } else {
            ((DatagramChannel) pending.connected.channel()).write(ByteBuffer.wrap(datagram));
        }
    }

    private void connect(Pending pending) throws IOException {
        DatagramChannel own = DatagramChannel.open();
        try {
            own.configureBlocking(false);
            own.connect(pending.peer.address);
            pending.connected = own.register(selector, SelectionKey.OP_READ, pending);
            connected++;
        } catch (IOException | RuntimeException e) {
            own.close();
            throw e;
        }
    }

    void release(Pending pending) throws IOException {
        if (pending.connected != null) {
            SelectionKey key = pending.connected;
            pending.connected = null;
            connected--;
            key.channel().close();
        }
    }

    /** The next datagram of a socket, or null when there is none for now. */
    byte[] receive(DatagramChannel source) throws IOException {
        incoming.clear();
        from = source.isOpen() ? (InetSocketAddress) source.receive(incoming) : null;
        if (from == null) {
            return null;
        }
        byte[] datagram = new byte[incoming.flip().remaining()];
        incoming.get(datagram);
        return datagram;
    }

    /** Where the datagram just received came from. */
    InetSocketAddress from() {
        return from;
    }

    @Override
    public void close() throws IOException {
        if (!selector.isOpen()) {
            return;
        }
        for (SelectionKey key : selector.keys()) {
            key.channel().close();
        }
        selector.close();
    }
}
