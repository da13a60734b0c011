package org.roundsman.snmp;

import java.net.InetAddress;

/** Hears what a {@link NotificationReceiver} receives. Called on its one thread: quick, and without exceptions. */
public interface NotificationListener {

    /**
     * Takes a notification over.
     *
     * @return whether it was taken; if not, an inform stays without answer, so that its sender tries again
     */
    boolean take(Notification notification);

    /**
     * A message was not taken as a notification.
     *
     * @param version 1, 2 (v2c), 3, or 0 where it is not known
     */
    void refused(InetAddress from, int version, NotificationRefusal reason);

    /** A message came; whatever becomes of it is told besides. */
    default void received() {}

    /** A message was not even looked at, since its address sends too many. */
    default void dropped(InetAddress from) {}

    /** A notification came that was taken already: an inform whose answer got lost, or a doubled datagram. */
    default void repeated() {}

    /** An inform was answered. */
    default void answered() {}

    /** A Report told somebody what it needs to send SNMPv3 informs, or why one was refused. */
    default void reported() {}
}
