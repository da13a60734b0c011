package org.roundsman.notices.send;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** HMAC-SHA-256 (RFC 2104, FIPS 180-4; test values in RFC 4231). */
public final class Signature {

    private Signature() {}

    /**
     * What stands in the header: over the time in its decimal digits, a full stop, and the octets of the body.
     *
     * @param seconds since 1970-01-01T00:00:00Z
     * @return 64 hexadecimal digits, in lower case
     */
    public static String of(byte[] secret, long seconds, byte[] body) {
        byte[] time = (seconds + ".").getBytes(StandardCharsets.US_ASCII);
        return HexFormat.of().formatHex(mac(secret, time, body));
    }

    static byte[] mac(byte[] secret, byte[]... parts) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(secret, "HmacSHA256"));
            for (byte[] part : parts) {
                mac.update(part);
            }
            return mac.doFinal();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("HMAC-SHA-256 is part of every Java runtime", e);
        }
    }
}
