package org.roundsman.snmp.session;

import org.roundsman.snmp.SnmpAccess.AuthProtocol;
import org.roundsman.snmp.SnmpAccess.Level;
import org.roundsman.snmp.SnmpAccess.PrivProtocol;
import org.roundsman.snmp.SnmpAccess.User;
import org.snmp4j.security.AuthHMAC128SHA224;
import org.snmp4j.security.AuthHMAC192SHA256;
import org.snmp4j.security.AuthHMAC256SHA384;
import org.snmp4j.security.AuthHMAC384SHA512;
import org.snmp4j.security.AuthSHA;
import org.snmp4j.security.AuthenticationProtocol;
import org.snmp4j.security.ByteArrayWindow;
import org.snmp4j.security.DecryptParams;
import org.snmp4j.security.PrivAES128;
import org.snmp4j.security.PrivAES192;
import org.snmp4j.security.PrivAES256;
import org.snmp4j.security.PrivacyProtocol;

/**
 * One user's keys at one engine: signs, checks, encrypts, decrypts. AES-192 and AES-256 have no standards-track RFC;
 * the short key is lengthened as SNMP4J's plain classes do, which net-snmp's AES-192 and AES-256 also do.
 */
public final class Seal {

    private static final AuthenticationProtocol[] AUTH = {
        new AuthSHA(),
        new AuthHMAC128SHA224(),
        new AuthHMAC192SHA256(),
        new AuthHMAC256SHA384(),
        new AuthHMAC384SHA512()
    };
    private static final PrivacyProtocol[] PRIV = {new PrivAES128(), new PrivAES192(), new PrivAES256()};

    private final AuthenticationProtocol auth;
    private final byte[] authKey;
    private final PrivacyProtocol priv;
    private final byte[] privKey;

    /** An octet string that was encrypted, and what the other side needs to undo it. */
    public record Encrypted(byte[] octets, byte[] salt) {}

    /** Binds the keys; milliseconds where a password is new, microseconds otherwise. */
    public Seal(User user, byte[] engineId, PasswordKeys keys) {
        boolean signed = user.level() != Level.NO_AUTH;
        auth = signed ? protocol(user.auth()) : null;
        authKey = signed ? keys.localised(user.auth(), user.authPassword(), engineId) : null;
        boolean hidden = user.level() == Level.AUTH_PRIV;
        priv = hidden ? protocol(user.priv()) : null;
        privKey = hidden ? privacyKey(user, engineId, keys) : null;
    }

    static AuthenticationProtocol protocol(AuthProtocol protocol) {
        return AUTH[protocol.ordinal()];
    }

    static PrivacyProtocol protocol(PrivProtocol protocol) {
        return PRIV[protocol.ordinal()];
    }

    private byte[] privacyKey(User user, byte[] engineId, PasswordKeys keys) {
        byte[] key = keys.localised(user.auth(), user.privPassword(), engineId);
        if (key.length < priv.getMinKeyLength()) {
            key = priv.extendShortKey(key, null, engineId, auth);
        }
        return java.util.Arrays.copyOf(key, Math.min(key.length, priv.getMaxKeyLength()));
    }

    public boolean signs() {
        return auth != null;
    }

    public boolean encrypts() {
        return priv != null;
    }

    /** Octets of the signature as sent. */
    public int signatureLength() {
        return auth.getAuthenticationCodeLength();
    }

    /** Fills in the signature of a message whose signature field is all zero. */
    public void sign(byte[] message, int at) {
        auth.authenticate(authKey, message, 0, message.length, new ByteArrayWindow(message, at, signatureLength()));
    }

    public boolean isAuthentic(byte[] message, int at, int length) {
        return length == signatureLength()
                && auth.isAuthentic(authKey, message, 0, message.length, new ByteArrayWindow(message, at, length));
    }

    public Encrypted encrypt(byte[] plain, int boots, int time) {
        DecryptParams salt = new DecryptParams();
        byte[] octets = priv.encrypt(plain, 0, plain.length, privKey, boots, time, salt);
        return new Encrypted(octets, java.util.Arrays.copyOfRange(salt.array, salt.offset, salt.offset + salt.length));
    }

    /** The plain octets; what comes out of a wrong key is noise that no reader accepts. */
    public byte[] decrypt(byte[] octets, byte[] salt, int boots, int time) {
        return priv.decrypt(octets, 0, octets.length, privKey, boots, time, new DecryptParams(salt, 0, salt.length));
    }
}
