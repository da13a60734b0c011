package org.roundsman.discovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.discovery.AddressRanges.Target;

/** Prefix arithmetic of RFC 4632, special addresses of RFC 6890 and RFC 4291; the addresses are RFC 5737 and RFC 3849. */
class AddressRangesTest {

    private static List<String> hosts(String text) {
        return AddressRanges.read(text).targets(List.of(161)).stream()
                .map(Target::host)
                .toList();
    }

    /** RFC 4632 section 3.1 counts 2^(32-n) addresses in a prefix; network and broadcast are no hosts. */
    @ParameterizedTest
    @CsvSource({
        "192.0.2.0/24, 254, 192.0.2.1, 192.0.2.254",
        "192.0.2.128/25, 126, 192.0.2.129, 192.0.2.254",
        "198.51.100.64/30, 2, 198.51.100.65, 198.51.100.66",
        "10.20.16.0/20, 4094, 10.20.16.1, 10.20.31.254",
        "192.0.2.6/31, 2, 192.0.2.6, 192.0.2.7", // RFC 3021
        "192.0.2.9/32, 1, 192.0.2.9, 192.0.2.9",
        "192.0.2.10-192.0.2.12, 3, 192.0.2.10, 192.0.2.12",
        "192.0.2.250-192.0.3.5, 12, 192.0.2.250, 192.0.3.5",
        "192.0.2.10-20, 11, 192.0.2.10, 192.0.2.20",
        "2001:db8::/126, 4, 2001:db8::, 2001:db8::3",
        "2001:DB8:0:0:1:0:0:1, 1, 2001:db8::1:0:0:1, 2001:db8::1:0:0:1", // RFC 5952 4.2.3
        "2001:db8:0:1:1:1:1:1, 1, 2001:db8:0:1:1:1:1:1, 2001:db8:0:1:1:1:1:1" // RFC 5952 4.2.2
    })
    void aRangeHasItsAddresses(String text, int count, String first, String last) {
        List<String> hosts = hosts(text);
        assertThat(hosts).hasSize(count).startsWith(first).endsWith(last).doesNotHaveDuplicates();
    }

    @Test
    void whatIsEnteredTwiceCountsOnce() {
        assertThat(hosts("192.0.2.0/24\n192.0.2.17, 192.0.2.250-192.0.2.255")).hasSize(255);
    }

    @ParameterizedTest
    @CsvSource({
        "224.0.0.1, multicast",
        "239.255.0.0/24, multicast",
        "223.255.255.0-224.0.0.3, multicast",
        "0.0.0.0, this network",
        "255.255.255.255, broadcast",
        "ff02::1, multicast",
        "::, unspecified",
        "fe80::1, link-local",
        "::ffff:192.0.2.1, no range of addresses",
        "192.0.2.17/24, 192.0.2.0/24 for all of it",
        "192.0.2.0/33, a number from 0 to 32",
        "192.0.2.20-192.0.2.10, ends before it begins",
        "192.0.2.1-2001:db8::1, ends before it begins",
        "192.0.2.300, no range of addresses",
        "192.0.02.1, no range of addresses",
        "ap-3.example, no range of addresses"
    })
    void whatCannotBeSweptIsRefusedWithItsReason(String text, String reason) {
        assertThatThrownBy(() -> AddressRanges.read(text))
                .hasMessageContaining(reason)
                .hasMessageContaining(text);
    }

    @Test
    void aSweepHasAtMost4096Addresses() {
        assertThat(AddressRanges.read("10.0.0.0-10.0.15.255").questions(1)).isEqualTo(4_096);
        assertThatThrownBy(() -> AddressRanges.read("10.0.0.0-10.0.16.0").questions(1))
                .hasMessageContaining("4,097 addresses")
                .hasMessageContaining("at most 4,096");
        assertThatThrownBy(() -> AddressRanges.read("10.0.0.0/8").questions(1)).hasMessageContaining("16,777,214");
        assertThatThrownBy(() -> AddressRanges.read("2001:db8::/64").questions(1))
                .hasMessageContaining("18,446,744,073,709,551,616");
        assertThatThrownBy(() -> AddressRanges.read("10.0.0.0/20").questions(2))
                .hasMessageContaining("on 2 ports each");
        assertThatThrownBy(() -> AddressRanges.read(" \n").questions(1))
                .hasMessageContaining("enter at least one range");
    }
}
