package org.roundsman.demo.agent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.snmp4j.security.AuthHMAC192SHA256;
import org.snmp4j.smi.OctetString;

class KeysTest {

    /** Password and engine of RFC 3414, A.3; the SHA-256 key was computed with Python, apart from this code. */
    @Test
    void theKeyForMaplesyrupIsTheKnownOne() {
        byte[] engine = HexFormat.of().parseHex("000000000000000000000002");
        assertThat(HexFormat.of().formatHex(Keys.localised("maplesyrup", engine)))
                .isEqualTo("8982e0e549e866db361a6b625d84cccc11162d453ee8ce3a6445c2d6776f0f8b");
    }

    @Test
    void keysAreThoseOfSnmp4j() {
        byte[] engine = HexFormat.of().parseHex("80007ed90300005e005308");
        assertThat(Keys.localised("demo-auth-pebblegate", engine))
                .isEqualTo(new AuthHMAC192SHA256().passwordToKey(new OctetString("demo-auth-pebblegate"), engine));
    }
}
