package org.roundsman.snmp.session;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.snmp.SnmpAccess.AuthProtocol;

/**
 * Turns passwords into keys (RFC 3414 A.2, RFC 7860 for SHA-2). The slow step, hashing 1 MiB of repeated password, is
 * done once per password and kept; the step that binds a key to one engine is quick. Thread-safe.
 */
public final class PasswordKeys {

    private static final int STRETCHED = 1_048_576;
    private static final int KEPT = 4_096;

    private record Password(AuthProtocol protocol, String text) {
        @Override
        public String toString() {
            return "password for " + protocol;
        }
    }

    private final Map<Password, byte[]> keys = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Password, byte[]> eldest) {
            return size() > KEPT;
        }
    };

    /** Whether the slow step was done for this password. */
    boolean knows(AuthProtocol protocol, String password) {
        synchronized (keys) {
            return keys.containsKey(new Password(protocol, password));
        }
    }

    /** The key Ku before it is bound to an engine. Takes milliseconds the first time. */
    public byte[] key(AuthProtocol protocol, String password) {
        Password name = new Password(protocol, password);
        synchronized (keys) {
            byte[] known = keys.get(name);
            if (known != null) {
                return known.clone();
            }
        }
        byte[] made = stretch(protocol, password.getBytes(StandardCharsets.UTF_8));
        synchronized (keys) {
            keys.put(name, made);
        }
        return made.clone();
    }

    /** The key Kul for one engine: hash of Ku, engine ID, Ku. */
    public byte[] localised(AuthProtocol protocol, String password, byte[] engineId) {
        byte[] key = key(protocol, password);
        MessageDigest digest = digest(protocol);
        digest.update(key);
        digest.update(engineId);
        return digest.digest(key);
    }

    private static byte[] stretch(AuthProtocol protocol, byte[] password) {
        if (password.length == 0) {
            throw new IllegalArgumentException("an empty SNMPv3 password");
        }
        MessageDigest digest = digest(protocol);
        byte[] block = new byte[64 * password.length];
        for (int i = 0; i < block.length; i++) {
            block[i] = password[i % password.length];
        }
        for (int left = STRETCHED; left > 0; left -= block.length) {
            digest.update(block, 0, Math.min(left, block.length));
        }
        return digest.digest();
    }

    private static MessageDigest digest(AuthProtocol protocol) {
        try {
            return MessageDigest.getInstance(
                    switch (protocol) {
                        case SHA1 -> "SHA-1";
                        case SHA224 -> "SHA-224";
                        case SHA256 -> "SHA-256";
                        case SHA384 -> "SHA-384";
                        case SHA512 -> "SHA-512";
                    });
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("this Java runtime lacks " + protocol, e);
        }
    }
}
