package org.roundsman.snmp;

/**
 * Our own SNMP engine (RFC 3411), to which informs of SNMPv3 are addressed.
 *
 * @param id snmpEngineID, 5 to 32 octets; not changed by anybody who gets it
 * @param boots snmpEngineBoots: how often it started, at least 1
 */
public record EngineIdentity(byte[] id, int boots) {

    public EngineIdentity {
        if (id.length < 5 || id.length > 32 || boots < 1) {
            throw new IllegalArgumentException("an engine ID of " + id.length + " octets with boots " + boots);
        }
    }
}
