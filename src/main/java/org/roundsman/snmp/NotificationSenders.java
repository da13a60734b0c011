package org.roundsman.snmp;

import java.net.InetAddress;
import java.util.List;

/** Who may send notifications. Asked for each message, on the receiving thread: answers from memory. */
@FunctionalInterface
public interface NotificationSenders {

    /** The devices at that address; more than one where several sites use the same addresses. */
    List<NotificationSender> at(InetAddress address);
}
