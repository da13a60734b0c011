package org.roundsman.system;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import org.roundsman.system.SetupException.Fault;

/**
 * The key under which secrets are sealed: 32 random bytes, in base64, in a file of mode 0600 outside the database. Who
 * loses it has to enter every SNMP credential again, so it belongs into the backup, but not beside the database's own.
 */
public final class SecretKey {

    private static final int KEY_BYTES = 32;
    private static final int ID_BYTES = 4;

    private final Path file;
    private final byte[] bytes;

    private SecretKey(Path file, byte[] bytes) {
        this.file = file;
        this.bytes = bytes;
    }

    /**
     * Reads the key file; makes one with a fresh key where there is none.
     *
     * @throws SetupException when others may read the file, when it is malformed, or cannot be read or made
     */
    public static SecretKey in(Path file) {
        try {
            if (Files.notExists(file)) {
                byte[] fresh = new byte[KEY_BYTES];
                new SecureRandom().nextBytes(fresh);
                PrivateFiles.createOnce(file, Base64.getEncoder().encodeToString(fresh) + "\n");
            }
            return new SecretKey(file, read(file));
        } catch (IOException e) {
            throw new SetupException(
                    Fault.KEY_FILE,
                    "The key file " + file + " cannot be read or made (" + e
                            + "). Let the user that runs the service own it and its folder.",
                    e);
        }
    }

    private static byte[] read(Path file) throws IOException {
        if (PrivateFiles.openToOthers(file)) {
            throw new SetupException(
                    Fault.KEY_FILE,
                    "The key file " + file + " may be opened by others than its owner. Run: chmod 600 " + file);
        }
        byte[] text = Files.readAllBytes(file);
        try {
            byte[] key = Base64.getDecoder().decode(new String(text, StandardCharsets.ISO_8859_1).strip());
            if (key.length == KEY_BYTES) {
                return key;
            }
        } catch (IllegalArgumentException e) {
            throw malformed(file, e);
        }
        throw malformed(file, null);
    }

    private static SetupException malformed(Path file, Throwable cause) {
        return new SetupException(
                Fault.KEY_FILE,
                "The key file " + file
                        + " must hold 32 bytes in base64 (44 characters) and does not. Put back the file "
                        + "from a backup; without it, sealed credentials have to be entered again.",
                cause);
    }

    Path file() {
        return file;
    }

    byte[] bytes() {
        return bytes;
    }

    /** Tells keys apart without giving them away: the first four bytes of a SHA-256 over a label and the key. */
    byte[] id() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update("roundsman key id".getBytes(StandardCharsets.US_ASCII));
            return Arrays.copyOf(digest.digest(bytes), ID_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is part of every Java runtime", e);
        }
    }

    /** The same in eight hexadecimal digits, as messages name a key. */
    public String idText() {
        return HexFormat.of().formatHex(id());
    }

    @Override
    public String toString() {
        return "key in " + file;
    }
}
