package org.roundsman.snmp.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.snmp.SnmpAccess.AuthProtocol;
import org.snmp4j.smi.OctetString;

/**
 * Keys of the password "maplesyrup" at engine 000000000000000000000002. SHA-1: RFC 3414 appendix A.3.2. SHA-2: no
 * published vectors; worked out in another language (Python's hashlib) by the same rule (RFC 3414 A.2, RFC 7860).
 */
class PasswordKeysTest {

    private static final byte[] ENGINE = HexFormat.of().parseHex("000000000000000000000002");
    private static final String PASSWORD = "maplesyrup";

    private final PasswordKeys keys = new PasswordKeys();

    @ParameterizedTest
    @CsvSource({
        "SHA1,9fb5cc0381497b3793528939ff788d5d79145211",
        "SHA224,282a5867ee9aac639ad59df9572c7d3ac0fbc13a905b6df07dbbf00b",
        "SHA256,ab51014d1e077f6017df2b12bee5f5aa72993177e9bb569c4dff5a4ca0b4afac",
        "SHA384,e06eccdf2c68a06ed034723c9c26e0db3b669e1e2efed49150b55377a2e98f383c86fb836857444654b287c93f51ff64",
        "SHA512,7e4396de5aadc77be853819b98c9406265b3a9c37cc3176569847a4e4f6fba63dd3a73d04924d31a63f95a601f9385af"
                + "6be4ed1b37f87d040f7c6ed6f8d38a91"
    })
    void stretchesThePassword(AuthProtocol protocol, String expected) {
        assertThat(HexFormat.of().formatHex(keys.key(protocol, PASSWORD))).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "SHA1,6695febc9288e36282235fc7151f128497b38f3f",
        "SHA224,0bd8827c6e29f8065e08e09237f177e410f69b90e1782be682075674",
        "SHA256,8982e0e549e866db361a6b625d84cccc11162d453ee8ce3a6445c2d6776f0f8b",
        "SHA384,3b298f16164a11184279d5432bf169e2d2a48307de02b3d3f7e2b4f36eb6f0455a53689a3937eea07319a633d2ccba78",
        "SHA512,22a5a36cedfcc085807a128d7bc6c2382167ad6c0dbc5fdff856740f3d84c099ad1ea87a8db096714d9788bd544047c9"
                + "021e4229ce27e4c0a69250adfcffbb0b"
    })
    void bindsTheKeyToAnEngine(AuthProtocol protocol, String expected) {
        assertThat(HexFormat.of().formatHex(keys.localised(protocol, PASSWORD, ENGINE)))
                .isEqualTo(expected);
        assertThat(Seal.protocol(protocol).passwordToKey(new OctetString(PASSWORD), ENGINE))
                .as("what the SNMP library makes of the same password")
                .isEqualTo(HexFormat.of().parseHex(expected));
    }

    /** Lengths of the signature as sent: RFC 3414 section 6 and RFC 7860 section 4. */
    @ParameterizedTest
    @CsvSource({"SHA1,12", "SHA224,16", "SHA256,24", "SHA384,32", "SHA512,48"})
    void sendsSoManyOctetsOfSignature(AuthProtocol protocol, int octets) {
        assertThat(Seal.protocol(protocol).getAuthenticationCodeLength()).isEqualTo(octets);
    }

    @Test
    void remembersTheSlowStep() {
        assertThat(keys.knows(AuthProtocol.SHA256, PASSWORD)).isFalse();
        byte[] first = keys.key(AuthProtocol.SHA256, PASSWORD);
        assertThat(keys.knows(AuthProtocol.SHA256, PASSWORD)).isTrue();
        assertThat(keys.knows(AuthProtocol.SHA512, PASSWORD)).isFalse();
        assertThat(keys.key(AuthProtocol.SHA256, PASSWORD)).isEqualTo(first);
    }
}
