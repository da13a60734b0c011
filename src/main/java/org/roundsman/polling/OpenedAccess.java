package org.roundsman.polling;

import org.roundsman.fleet.CredentialSecrets;
import org.roundsman.snmp.SnmpAccess;

/** Makes opened credentials into what an agent is asked with. */
public final class OpenedAccess {

    private OpenedAccess() {}

    /** The same as the SNMP part of the program knows it. */
    public static SnmpAccess of(CredentialSecrets secrets) {
        if (secrets.version() < 3) {
            return new SnmpAccess.Community(secrets.version(), secrets.community());
        }
        return new SnmpAccess.User(
                secrets.userName(),
                SnmpAccess.Level.valueOf(secrets.level()),
                secrets.authProtocol().isEmpty() ? null : SnmpAccess.AuthProtocol.valueOf(secrets.authProtocol()),
                secrets.authPassword(),
                secrets.privProtocol().isEmpty() ? null : SnmpAccess.PrivProtocol.valueOf(secrets.privProtocol()),
                secrets.privPassword());
    }
}
