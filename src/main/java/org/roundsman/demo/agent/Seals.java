package org.roundsman.demo.agent;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Arrays;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.spec.IvParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/** HMAC-SHA-256 cut to 192 bits (RFC 7860) and AES-128 in CFB-128 (RFC 3826). One thread at a time. */
final class Seals {

    static final int DIGEST_OCTETS = 24;
    static final int SALT_OCTETS = 8;

    private final Mac mac;
    private final Cipher cipher;

    Seals() {
        try {
            mac = Mac.getInstance("HmacSHA256");
            cipher = Cipher.getInstance("AES/CFB/NoPadding");
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform has HMAC-SHA-256 and AES", e);
        }
    }

    /** The digest over a message whose digest field holds zeros. */
    byte[] digest(byte[] key, byte[] message, int from, int length) {
        try {
            mac.init(new SecretKeySpec(key, "HmacSHA256"));
            mac.update(message, from, length);
            return Arrays.copyOf(mac.doFinal(), DIGEST_OCTETS);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    static boolean same(byte[] one, byte[] other) {
        return MessageDigest.isEqual(one, other);
    }

    /** Encrypts or decrypts in place; the length stays. */
    void turn(int mode, byte[] key, Moment moment, byte[] salt, byte[] buffer, int from, int length) {
        byte[] vector = new byte[16];
        put(vector, 0, moment.boots());
        put(vector, 4, moment.time());
        System.arraycopy(salt, 0, vector, 8, SALT_OCTETS);
        try {
            cipher.init(mode, new SecretKeySpec(key, "AES"), new IvParameterSpec(vector));
            cipher.doFinal(buffer, from, length, buffer, from);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Boot count and time of an engine, in seconds: part of the initialisation vector. */
    record Moment(int boots, int time) {}

    private static void put(byte[] into, int at, int value) {
        for (int i = 0; i < 4; i++) {
            into[at + i] = (byte) (value >> 8 * (3 - i));
        }
    }
}
