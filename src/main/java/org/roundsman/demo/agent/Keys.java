package org.roundsman.demo.agent;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Password to key for SHA-256 (RFC 3414, A.2, with the hash of RFC 7860). The slow first step is remembered. */
final class Keys {

    private static final int REPEATED_OCTETS = 1_048_576;
    private static final Map<String, byte[]> BY_PASSWORD = new ConcurrentHashMap<>();

    private Keys() {}

    static byte[] localised(String password, byte[] engineId) {
        byte[] key = BY_PASSWORD.computeIfAbsent(password, Keys::stretched);
        MessageDigest digest = sha256();
        digest.update(key);
        digest.update(engineId);
        return digest.digest(key);
    }

    private static byte[] stretched(String password) {
        byte[] octets = AgentState.text(password);
        MessageDigest digest = sha256();
        int left = REPEATED_OCTETS;
        while (left > 0) {
            int part = Math.min(left, octets.length);
            digest.update(octets, 0, part);
            left -= part;
        }
        return digest.digest();
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
