package org.roundsman.demo.agent;

import java.util.Arrays;
import org.roundsman.demo.DemoCredential;
import org.roundsman.demo.DemoDevice;

/**
 * The v3 side of one agent: its engine and its one user, who must sign and encrypt (SHA-256, AES-128). An agent whose
 * credential is a community has an engine and no user.
 */
final class Usm {

    private static final int PRIVACY_KEY_OCTETS = 16;

    private final byte[] engineId;
    private final byte[] userName;
    private final byte[] authKey;
    private final byte[] privKey;
    private final int[] reports = new int[Cause.values().length];

    /** Why a message is answered by a Report (RFC 3414, 3.2; RFC 3412, 7.2). */
    enum Cause {
        LEVEL_UNSUPPORTED("1.3.6.1.6.3.15.1.1.1.0"),
        OUT_OF_WINDOW("1.3.6.1.6.3.15.1.1.2.0"),
        USER_UNKNOWN("1.3.6.1.6.3.15.1.1.3.0"),
        ENGINE_UNKNOWN("1.3.6.1.6.3.15.1.1.4.0"),
        WRONG_DIGEST("1.3.6.1.6.3.15.1.1.5.0"),
        DECRYPTION_FAILED("1.3.6.1.6.3.15.1.1.6.0"),
        CONTEXT_UNKNOWN("1.3.6.1.6.3.12.1.5.0");

        final byte[] name;

        Cause(String name) {
            this.name = Names.encoded(name);
        }
    }

    private Usm(byte[] engineId, byte[] userName, byte[] authKey, byte[] privKey) {
        this.engineId = engineId;
        this.userName = userName;
        this.authKey = authKey;
        this.privKey = privKey;
    }

    static Usm of(DemoDevice device) {
        byte[] engine = engineId(device);
        if (device.accepts() instanceof DemoCredential.User user) {
            byte[] priv = Keys.localised(user.privPassword(), engine);
            return new Usm(
                    engine,
                    AgentState.text(user.userName()),
                    Keys.localised(user.authPassword(), engine),
                    Arrays.copyOf(priv, PRIVACY_KEY_OCTETS));
        }
        return new Usm(engine, null, null, null);
    }

    /** SnmpEngineID of RFC 3411: enterprise number with the first bit set, format 3, base MAC address. */
    private static byte[] engineId(DemoDevice device) {
        byte[] id = new byte[11];
        id[0] = (byte) 0x80;
        id[2] = (byte) (32473 >> 8);
        id[3] = (byte) 32473;
        id[4] = 3;
        System.arraycopy(InterfaceObjects.mac(device.mac()), 0, id, 5, 6);
        return id;
    }

    byte[] engineId() {
        return engineId;
    }

    boolean isUser(byte[] name) {
        return userName != null && Arrays.equals(userName, name);
    }

    /** The name of its one user, or null where it has none. */
    byte[] userName() {
        return userName;
    }

    byte[] authKey() {
        return authKey;
    }

    byte[] privKey() {
        return privKey;
    }

    /** Counts a report and says the count that it carries. */
    int count(Cause cause) {
        return ++reports[cause.ordinal()];
    }
}
