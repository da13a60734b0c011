package org.roundsman.snmp;

import java.util.List;

/**
 * A device that may send notifications.
 *
 * @param id the device's, as the caller counts
 * @param group whose device it is: senders of several groups at one address are never told apart by a shared secret
 * @param own the access by which it is read
 * @param others further accesses that it may use
 * @param engineId its snmpEngineID as hexadecimal digits, or empty where it is not known
 */
public record NotificationSender(long id, long group, SnmpAccess own, List<SnmpAccess> others, String engineId) {

    public NotificationSender {
        others = List.copyOf(others);
    }
}
