package org.roundsman.snmp.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.roundsman.snmp.SnmpAccess;
import org.snmp4j.PDU;
import org.snmp4j.asn1.BER;
import org.snmp4j.asn1.BERInputStream;
import org.snmp4j.asn1.BEROutputStream;
import org.snmp4j.smi.Integer32;
import org.snmp4j.smi.OID;

/** What we write is compared with the SNMP library's own reader and writer of BER (ITU-T X.690). */
class EnvelopeTest {

    @Property
    void readsTheNumberOfWhatItsOwnSideWrites(@ForAll @IntRange(min = 0x0100_0000) int number) {
        byte[] message = new CommunityDialect(new SnmpAccess.Community(2, "lantern"))
                .encode(Request.get(List.of(new OID("1.3.6.1.2.1.1.3.0"))), number, false);
        assertThat(Envelope.numberOf(message)).isEqualTo(number);
    }

    @Property
    void survivesAnyOctets(@ForAll byte[] octets) {
        assertThatCode(() -> Envelope.numberOf(octets)).doesNotThrowAnyException();
    }

    @Property
    void survivesAMessageWithOneOctetChanged(@ForAll @IntRange(max = 59) int place, @ForAll byte octet) {
        CommunityDialect dialect = new CommunityDialect(new SnmpAccess.Community(2, "lantern"));
        byte[] message = dialect.encode(Request.get(List.of(new OID("1.3.6.1.2.1.1.3.0"))), 0x0102_0304, false);
        message[place % message.length] = octet;
        assertThatCode(() -> Envelope.numberOf(message)).doesNotThrowAnyException();
    }

    @Property
    void writesIntegersAsTheLibraryDoes(@ForAll int value) throws IOException {
        BEROutputStream out = new BEROutputStream(ByteBuffer.allocate(6));
        BER.encodeInteger(out, BER.INTEGER, value);
        byte[] expected = new byte[out.getBuffer().flip().remaining()];
        out.getBuffer().get(expected);
        assertThat(new Octets().integer(value).toArray()).isEqualTo(expected);
    }

    @Property
    void writesRequestsThatTheLibraryReads(
            @ForAll @Size(min = 1, max = 80) List<@IntRange(min = 0) Integer> parts,
            @ForAll @IntRange(max = 200) int repetitions)
            throws IOException {
        List<OID> oids = parts.stream()
                .map(part -> new OID(new int[] {1, 3, 6, 1, part}))
                .toList();
        Octets octets = new Octets();
        Request.getBulk(oids, repetitions).writeTo(octets, 77);
        PDU read = new PDU();
        read.decodeBER(new BERInputStream(ByteBuffer.wrap(octets.toArray())));
        assertThat(read.getType()).isEqualTo(PDU.GETBULK);
        assertThat(read.getRequestID()).isEqualTo(new Integer32(77));
        assertThat(read.getMaxRepetitions()).isEqualTo(repetitions);
        assertThat(read.getVariableBindings().stream().map(b -> b.getOid())).containsExactlyElementsOf(oids);
    }
}
