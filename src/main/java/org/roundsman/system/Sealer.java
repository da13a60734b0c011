package org.roundsman.system;

import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/**
 * Seals secrets for keeping in the database: AES-256-GCM (NIST SP 800-38D) with a random 96-bit nonce and a 128-bit tag.
 *
 * <p>Layout: version (1 byte, 1), key id (4 bytes), nonce (12), ciphertext, tag (16). Version, key id and the caller's
 * context are authenticated, so that a sealed value moved to another row does not open. Thread-safe.
 */
public final class Sealer {

    private static final byte VERSION = 1;
    private static final int KEY_ID_BYTES = 4;
    private static final int NONCE_BYTES = 12;
    private static final int TAG_BITS = 128;
    private static final int HEADER_BYTES = 1 + KEY_ID_BYTES;
    private static final int LEAST_BYTES = HEADER_BYTES + NONCE_BYTES + TAG_BITS / 8;

    private final SecretKey key;
    private final SecureRandom random = new SecureRandom();

    /** Seals and opens under this key. */
    public Sealer(SecretKey key) {
        this.key = key;
    }

    /**
     * Seals a secret.
     *
     * @param plain the secret, may be empty
     * @param context what the secret belongs to, such as {@code credential/7/community} in UTF-8; needed again to open it
     */
    public byte[] seal(byte[] plain, byte[] context) {
        byte[] header = header();
        byte[] nonce = new byte[NONCE_BYTES];
        random.nextBytes(nonce);
        try {
            byte[] ciphertext =
                    cipher(Cipher.ENCRYPT_MODE, nonce, header, context).doFinal(plain);
            return ByteBuffer.allocate(header.length + nonce.length + ciphertext.length)
                    .put(header)
                    .put(nonce)
                    .put(ciphertext)
                    .array();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("AES-GCM is part of every Java runtime", e);
        }
    }

    /**
     * Opens what {@link #seal} made with the same context.
     *
     * @throws SealException when the key is another one, the context is another one, or the bytes are damaged
     */
    public byte[] open(byte[] sealed, byte[] context) {
        if (sealed.length < LEAST_BYTES || sealed[0] != VERSION) {
            throw new SealException("not a sealed secret: " + sealed.length + " bytes, version "
                    + (sealed.length == 0 ? "none" : sealed[0]) + ", expected version " + VERSION);
        }
        byte[] header = Arrays.copyOf(sealed, HEADER_BYTES);
        requireOurKey(Arrays.copyOfRange(header, 1, HEADER_BYTES));
        byte[] nonce = Arrays.copyOfRange(sealed, HEADER_BYTES, HEADER_BYTES + NONCE_BYTES);
        try {
            int start = HEADER_BYTES + NONCE_BYTES;
            return cipher(Cipher.DECRYPT_MODE, nonce, header, context).doFinal(sealed, start, sealed.length - start);
        } catch (GeneralSecurityException e) {
            throw new SealException("a sealed secret is damaged or stands in another place than it was sealed for", e);
        }
    }

    /** Whether that was sealed under this key, as far as its header tells. */
    public boolean sealedUnderThisKey(byte[] sealed) {
        return sealed.length >= LEAST_BYTES && Arrays.equals(Arrays.copyOfRange(sealed, 1, HEADER_BYTES), key.id());
    }

    private void requireOurKey(byte[] sealedUnder) {
        if (!Arrays.equals(sealedUnder, key.id())) {
            throw new SealException("the key does not fit: this secret was sealed under key "
                    + HexFormat.of().formatHex(sealedUnder) + ", but " + key.file() + " holds key "
                    + HexFormat.of().formatHex(key.id())
                    + ". Put back the key file that belongs to this database, or enter the secret again.");
        }
    }

    private byte[] header() {
        return ByteBuffer.allocate(HEADER_BYTES).put(VERSION).put(key.id()).array();
    }

    private Cipher cipher(int mode, byte[] nonce, byte[] header, byte[] context) throws GeneralSecurityException {
        Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
        cipher.init(mode, new SecretKeySpec(key.bytes(), "AES"), new GCMParameterSpec(TAG_BITS, nonce));
        cipher.updateAAD(header);
        cipher.updateAAD(context);
        return cipher;
    }
}
