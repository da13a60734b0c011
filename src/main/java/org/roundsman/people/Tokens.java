package org.roundsman.people;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;

/** Tokens: 256 random bits for the browser or the program that holds them, their SHA-256 for us. */
final class Tokens {

    /** What every personal token begins with, so that one that lies about somewhere is recognised. */
    static final String PERSONAL = "roundsman_";

    private static final SecureRandom RANDOM = new SecureRandom();

    private Tokens() {}

    static String fresh() {
        byte[] bits = new byte[32];
        RANDOM.nextBytes(bits);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bits);
    }

    static byte[] hash(String token) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java platform has SHA-256
        }
    }
}
