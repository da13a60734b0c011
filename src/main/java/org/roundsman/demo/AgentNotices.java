package org.roundsman.demo;

import java.net.InetSocketAddress;
import java.time.Clock;
import org.roundsman.demo.agent.NoticeSender;

/**
 * The notifications of an invented fleet: coldStart and warmStart from a device that has restarted, linkDown and linkUp
 * from the switch at which a cable went dead or came back, and the maker's own about radar and fans. Each goes from its
 * device's loopback address to one receiver, as a trap of v1, v2c or v3 with the credential of the device. While a site's
 * line is lost, nothing of it gets out.
 */
public final class AgentNotices implements AutoCloseable {

    private final NoticeSender sender;

    private AgentNotices(NoticeSender sender) {
        this.sender = sender;
    }

    /** Begins to send; what changed before is not told. */
    public static AgentNotices start(Faults faults, Clock clock, InetSocketAddress receiver) {
        return new AgentNotices(NoticeSender.start(faults, clock, receiver));
    }

    /**
     * The receiver that a text names.
     *
     * @param text address and port, such as {@code 127.0.0.1:10162}
     * @throws IllegalArgumentException in plain words, when it is anything else; names are not looked up
     */
    public static InetSocketAddress receiver(String text) {
        int colon = text.lastIndexOf(':');
        String port = text.substring(colon + 1);
        boolean plain = colon > 0
                && text.substring(0, colon).matches("\\d{1,3}(\\.\\d{1,3}){3}")
                && port.matches("\\d{1,5}")
                && Integer.parseInt(port) >= 1
                && Integer.parseInt(port) <= 65_535;
        if (!plain) {
            throw new IllegalArgumentException(
                    "notifications go to an IPv4 address and a port, such as 127.0.0.1:10162, not to \"" + text + "\"");
        }
        return new InetSocketAddress(text.substring(0, colon), Integer.parseInt(port));
    }

    /** Notifications sent since the start. */
    public long sent() {
        return sender.sent();
    }

    @Override
    public void close() {
        sender.close();
    }
}
