package org.roundsman.discovery;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Prefixes against java.net and the arithmetic of RFC 4632. */
class AddressRangesPropertyTest {

    /** java.net reads every address as we mean it, and agrees about which bits are the network's. */
    @Property(tries = 200)
    void aPrefixIsWhatItsBitsSay(@ForAll int address, @ForAll @IntRange(min = 20, max = 30) int length)
            throws UnknownHostException {
        int network = (address & (-1 << 32 - length)) & 0x7fffffff | 0x0a000000;
        String prefix = InetAddress.getByAddress(octets(network)).getHostAddress();
        List<String> hosts = AddressRanges.read(prefix + "/" + length).targets(List.of(161)).stream()
                .map(AddressRanges.Target::host)
                .toList();
        assertThat(hosts).hasSize((1 << 32 - length) - 2);
        for (String host : List.of(hosts.get(0), hosts.get(hosts.size() - 1))) {
            byte[] read = InetAddress.getByName(host).getAddress();
            int value = (read[0] & 255) << 24 | (read[1] & 255) << 16 | (read[2] & 255) << 8 | read[3] & 255;
            assertThat(value & (-1 << 32 - length)).isEqualTo(network);
        }
    }

    private static byte[] octets(int value) {
        return new byte[] {(byte) (value >> 24), (byte) (value >> 16), (byte) (value >> 8), (byte) value};
    }
}
