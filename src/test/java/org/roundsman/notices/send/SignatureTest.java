package org.roundsman.notices.send;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** HMAC-SHA-256 against the test cases of RFC 4231, sections 4.2 to 4.8 (the truncated one, 4.6, left out). */
class SignatureTest {

    static Stream<Arguments> cases() {
        return Stream.of(
                Arguments.of(
                        "0b".repeat(20),
                        hex("Hi There"),
                        "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7"),
                Arguments.of(
                        hex("Jefe"),
                        hex("what do ya want for nothing?"),
                        "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843"),
                Arguments.of(
                        "aa".repeat(20),
                        "dd".repeat(50),
                        "773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe"),
                Arguments.of(
                        "0102030405060708090a0b0c0d0e0f10111213141516171819",
                        "cd".repeat(50),
                        "82558a389a443c0ea4cc819899f2083a85f0faa3e578f8077a2e3ff46729665b"),
                Arguments.of(
                        "aa".repeat(131),
                        hex("Test Using Larger Than Block-Size Key - Hash Key First"),
                        "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54"),
                Arguments.of(
                        "aa".repeat(131),
                        hex("This is a test using a larger than block-size key and a larger than block-size data."
                                + " The key needs to be hashed before being used by the HMAC algorithm."),
                        "9b09ffa71b942fcb27635fbcd5b0e944bfdc63644f0713938a7f51535c3a35e2"));
    }

    private static String hex(String text) {
        return HexFormat.of().formatHex(text.getBytes(US_ASCII));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void theCodeIsThatOfTheStandard(String key, String data, String expected) {
        byte[] mac = Signature.mac(HexFormat.of().parseHex(key), HexFormat.of().parseHex(data));
        assertThat(HexFormat.of().formatHex(mac)).isEqualTo(expected);
    }

    @Test
    void timeAndBodyAreBothSigned() {
        byte[] secret = "quayside".getBytes(US_ASCII);
        String one = Signature.of(secret, 1_772_622_000, "{}".getBytes(US_ASCII));
        assertThat(Signature.of(secret, 1_772_622_001, "{}".getBytes(US_ASCII))).isNotEqualTo(one);
        assertThat(Signature.of(secret, 1_772_622_000, "{ }".getBytes(US_ASCII)))
                .isNotEqualTo(one);
        assertThat(HexFormat.of().formatHex(Signature.mac(secret, "1772622000.{}".getBytes(US_ASCII))))
                .isEqualTo(one);
    }
}
