package org.roundsman.snmp.notice;

import org.roundsman.snmp.NotificationRefusal;
import org.roundsman.snmp.NotificationSender;

/** What a received message is. */
sealed interface Judgement {

    /**
     * A notification of a certain sender.
     *
     * @param answer what to send back once it is taken, or null for a trap
     * @param content what makes it the same as another
     */
    record Heard(NotificationSender sender, TrapForm form, byte[] answer, byte[] content) implements Judgement {}

    /**
     * Not let in.
     *
     * @param report what to send back, or null
     */
    record Refused(NotificationRefusal reason, byte[] report) implements Judgement {
        Refused(NotificationRefusal reason) {
            this(reason, null);
        }
    }

    /** Somebody asks who we are, as SNMPv3 begins (RFC 3414 section 4). */
    record Asked(byte[] report) implements Judgement {}
}
