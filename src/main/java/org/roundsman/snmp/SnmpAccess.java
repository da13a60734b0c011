package org.roundsman.snmp;

/** How to be let in by an SNMP agent. {@code toString} never shows a secret. */
public sealed interface SnmpAccess {

    /**
     * SNMP v1 or v2c.
     *
     * @param version 1 or 2
     */
    record Community(int version, String community) implements SnmpAccess {
        @Override
        public String toString() {
            return "v" + (version == 1 ? "1" : "2c") + " community";
        }
    }

    /**
     * SNMP v3 with the user-based security model (RFC 3414).
     *
     * @param auth null unless the level asks for it
     * @param priv null unless the level asks for it
     */
    record User(
            String name, Level level, AuthProtocol auth, String authPassword, PrivProtocol priv, String privPassword)
            implements SnmpAccess {
        @Override
        public String toString() {
            return "v3 user " + name + " " + level + (auth == null ? "" : " " + auth)
                    + (priv == null ? "" : " " + priv);
        }
    }

    /** Security levels of RFC 3411. */
    enum Level {
        NO_AUTH,
        AUTH,
        AUTH_PRIV
    }

    /** Authentication protocols of RFC 3414 and RFC 7860. */
    enum AuthProtocol {
        SHA1,
        SHA224,
        SHA256,
        SHA384,
        SHA512
    }

    /** Privacy protocols of RFC 3826, and its common 192 and 256 bit extensions. */
    enum PrivProtocol {
        AES128,
        AES192,
        AES256
    }
}
