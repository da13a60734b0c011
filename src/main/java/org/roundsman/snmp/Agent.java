package org.roundsman.snmp;

/**
 * Where an SNMP agent is and how it lets us in.
 *
 * @param host address or host name
 * @param port UDP port, 1 to 65535
 */
public record Agent(String host, int port, SnmpAccess access) {

    public Agent {
        if (port < 1 || port > 65_535) {
            throw new IllegalArgumentException("UDP port " + port + " of " + host + ": 1 to 65535 are possible");
        }
    }
}
