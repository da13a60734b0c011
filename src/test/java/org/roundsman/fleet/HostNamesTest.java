package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text forms: RFC 1123 section 2.1 for names, RFC 4291 section 2.2 for IPv6 (both from memory). */
class HostNamesTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "192.0.2.17",
                "127.0.0.1",
                "255.255.255.255",
                "ap-3.example",
                "AP3",
                "sw_2.pier.example.",
                "2001:db8::17",
                "::1",
                "::",
                "2001:db8:1:2:3:4:5:6",
                "::ffff:192.0.2.17"
            })
    void takesAddressesAndNames(String host) {
        assertThat(HostNames.valid(host)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "192.0.2.300",
                "192.0.2",
                "1.2.3.4.5",
                "192.0.2.",
                "ap 3",
                "-ap.example",
                "ap..example",
                "http://ap.example",
                "ap.example:161",
                "2001:db8::1::2",
                "2001:db8:1:2:3:4:5:6:7",
                "12345::1",
                "ap/3",
                "2001:db8:1:2:3:4:5:"
            })
    void refusesWhatIsNeither(String host) {
        assertThat(HostNames.valid(host)).isFalse();
    }
}
