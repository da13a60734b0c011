package org.roundsman.demo.agent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.snmp4j.asn1.BER;
import org.snmp4j.asn1.BERInputStream;
import org.snmp4j.smi.Counter64;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.UnsignedInteger32;

/** Our own encoding against SNMP4J's, which shares no code with it. */
class BerTest {

    private final BerWriter out = new BerWriter(2000);

    private byte[] written() {
        return Arrays.copyOfRange(out.buffer(), out.position(), out.buffer().length);
    }

    @Property
    void integersAreEncodedAsSnmp4jDoes(@ForAll int value) throws IOException {
        out.clear();
        out.integer(Tags.INTEGER, value);
        ByteArrayOutputStream expected = new ByteArrayOutputStream();
        new Integer32(value).encodeBER(expected);
        assertThat(written()).isEqualTo(expected.toByteArray());
    }

    @Property
    void numbersWithoutSignAreEncodedAsSnmp4jDoes(@ForAll long value) throws IOException {
        out.clear();
        out.unsigned32(Tags.GAUGE32, value);
        ByteArrayOutputStream expected = new ByteArrayOutputStream();
        new UnsignedInteger32(value & 0xFFFF_FFFFL).encodeBER(expected);
        assertThat(written()).isEqualTo(expected.toByteArray());
        out.clear();
        out.unsigned64(Tags.COUNTER64, value);
        Counter64 decoded = new Counter64();
        decoded.decodeBER(new BERInputStream(ByteBuffer.wrap(written())));
        assertThat(decoded.getValue()).isEqualTo(value);
    }

    @Property
    void namesAreReadAsSnmp4jWroteThemAndWrittenTheSame(
            @ForAll @Size(max = 60) List<Integer> rest, @ForAll @IntRange(max = 39) int second) throws Exception {
        int[] name = new int[rest.size() + 2];
        name[0] = 1;
        name[1] = second;
        for (int i = 0; i < rest.size(); i++) {
            name[i + 2] = rest.get(i);
        }
        ByteArrayOutputStream expected = new ByteArrayOutputStream();
        new OID(name).encodeBER(expected);
        byte[] octets = expected.toByteArray();
        assertThat(Names.encoded(name)).isEqualTo(octets);
        BerReader in = new BerReader();
        in.over(octets, 0, octets.length);
        int[] read = new int[Limits.NAME_NUMBERS];
        assertThat(Arrays.copyOf(read, in.oid(read))).isEqualTo(name);
    }

    @Property
    void lengthsAreWrittenAsSnmp4jDoes(@ForAll @IntRange(max = 1800) int length) throws IOException {
        out.clear();
        out.string(Tags.OCTET_STRING, new byte[length]);
        ByteArrayOutputStream expected = new ByteArrayOutputStream();
        BER.encodeString(expected, (byte) Tags.OCTET_STRING, new byte[length]);
        // both forms of a length are right; SNMP4J's decoder has to accept ours
        BERInputStream in = new BERInputStream(ByteBuffer.wrap(written()));
        assertThat(BER.decodeString(in, new BER.MutableByte())).hasSize(length);
        assertThat(written().length).isLessThanOrEqualTo(expected.size());
    }

    @Property(tries = 2000)
    void whateverComesInIsRefusedOrRead(@ForAll byte[] octets) {
        BerReader in = new BerReader();
        in.over(octets, 0, octets.length);
        try {
            int end = in.head();
            assertThat(end).isBetween(0, octets.length);
            in.over(octets, 0, octets.length);
            in.oid(new int[Limits.NAME_NUMBERS]);
        } catch (BerReader.Malformed refused) {
            assertThat(refused).hasMessageMatching(".+");
        }
    }

    @Test
    void whatBreaksOffIsRefused() {
        BerReader in = new BerReader();
        in.over(new byte[] {0x30, 0x7F, 0}, 0, 3);
        assertThatThrownBy(in::head).isInstanceOf(BerReader.Malformed.class);
        in.over(new byte[] {0x02, 0}, 0, 2);
        assertThatThrownBy(in::integer).hasMessageContaining("0 octets");
        in.over(new byte[] {0x06, 2, 0x2B, (byte) 0x86}, 0, 4);
        assertThatThrownBy(() -> in.oid(new int[10])).hasMessageContaining("breaks off");
    }
}
