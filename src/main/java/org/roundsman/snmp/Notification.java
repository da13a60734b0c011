package org.roundsman.snmp;

import java.net.InetAddress;
import java.util.List;

/**
 * A trap or an inform whose sender is certain.
 *
 * @param sender id of the {@link NotificationSender}
 * @param version 1, 2 (v2c) or 3
 * @param inform whether an answer was wanted
 * @param oid snmpTrapOID; for SNMPv1 as RFC 3584 section 3.1 makes it
 * @param from the address that it came from
 * @param variables what it carries besides sysUpTime and snmpTrapOID, in its order
 */
public record Notification(
        long sender, int version, boolean inform, String oid, InetAddress from, List<RawAnswer> variables) {

    public Notification {
        variables = List.copyOf(variables);
    }
}
