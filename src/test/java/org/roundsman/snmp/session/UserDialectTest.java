package org.roundsman.snmp.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.SnmpAccess.AuthProtocol;
import org.roundsman.snmp.SnmpAccess.Level;
import org.roundsman.snmp.SnmpAccess.PrivProtocol;
import org.roundsman.snmp.SnmpAccess.User;
import org.snmp4j.PDU;
import org.snmp4j.ScopedPDU;
import org.snmp4j.asn1.BEROutputStream;
import org.snmp4j.smi.Counter32;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.VariableBinding;

/** Messages of SNMPv3 (RFC 3412, RFC 3414) that an agent may send without protection. */
class UserDialectTest {

    private static final User WALKER = new User(
            "walker", Level.AUTH_PRIV, AuthProtocol.SHA256, "authentication", PrivProtocol.AES128, "confidential");
    private static final byte[] ENGINE = HexFormat.of().parseHex("80007ed90401");
    private static final Request UPTIME = Request.get(List.of(new OID("1.3.6.1.2.1.1.3.0")));
    private static final OID UNKNOWN_ENGINE = new OID("1.3.6.1.6.3.15.1.1.4.0");

    private UserDialect dialect;

    @BeforeEach
    void meet() throws IOException {
        dialect = new UserDialect(WALKER, new PasswordKeys(), () -> 0);
        assertThat(dialect.decode(unprotected(ENGINE, PDU.REPORT, UNKNOWN_ENGINE), false))
                .isEqualTo(new Verdict.Again(Outcome.ENGINE_UNKNOWN, null));
    }

    /** A message without signature, as RFC 3412 section 6 and RFC 3414 section 2.4 lay it out. */
    private static byte[] unprotected(byte[] engine, int type, OID name) throws IOException {
        ScopedPDU pdu = new ScopedPDU();
        pdu.setType(type);
        pdu.setContextEngineID(new OctetString(engine));
        pdu.add(new VariableBinding(name, new Counter32(1)));
        BEROutputStream out = new BEROutputStream(ByteBuffer.allocate(pdu.getBERLength()));
        pdu.encodeBER(out);
        Octets octets = new Octets().prepend(out.getBuffer().array());
        int data = octets.length();
        octets.string(new byte[0])
                .string(new byte[0])
                .string("walker".getBytes())
                .integer(60)
                .integer(3)
                .string(engine)
                .wrap(0x30, data)
                .wrap(0x04, data);
        int parameters = octets.length();
        octets.integer(3).string(new byte[] {0}).integer(65_507).integer(0x0123_4567);
        return octets.wrap(0x30, parameters).integer(3).wrap(0x30, 0).toArray();
    }

    /** SNMP-USER-BASED-SM-MIB (RFC 3414), SNMP-MPD-MIB (RFC 3412), SNMP-TARGET-MIB (RFC 3413), SNMPv2-MIB (RFC 3418). */
    @ParameterizedTest
    @CsvSource({
        "1.3.6.1.6.3.15.1.1.1.0,LEVEL_UNSUPPORTED",
        "1.3.6.1.6.3.15.1.1.2.0,TIME_WINDOW",
        "1.3.6.1.6.3.15.1.1.3.0,USER_UNKNOWN",
        "1.3.6.1.6.3.15.1.1.5.0,WRONG_DIGEST",
        "1.3.6.1.6.3.15.1.1.6.0,PRIVACY_FAILED",
        "1.3.6.1.6.3.11.2.1.1.0,VERSION_UNSUPPORTED",
        "1.3.6.1.6.3.12.1.4.0,CONTEXT_UNKNOWN",
        "1.3.6.1.6.3.12.1.5.0,CONTEXT_UNKNOWN",
        "1.3.6.1.2.1.11.3.0,VERSION_UNSUPPORTED"
    })
    void reportsBecomeCauses(String counter, Outcome cause) throws IOException {
        assertThat(dialect.decode(unprotected(ENGINE, PDU.REPORT, new OID(counter)), false))
                .isEqualTo(new Verdict.Refused(cause));
    }

    @Test
    void aReportWithAnotherCounterIsIgnored() throws IOException {
        assertThat(dialect.decode(unprotected(ENGINE, PDU.REPORT, new OID("1.3.6.1.2.1.11.31.0")), false))
                .isInstanceOf(Verdict.Unusable.class);
    }

    @Test
    void aResponseWithoutSignatureIsNotBelieved() throws IOException {
        byte[] response = unprotected(ENGINE, PDU.RESPONSE, new OID("1.3.6.1.2.1.1.3.0"));
        assertThat(dialect.decode(response, false))
                .isEqualTo(new Verdict.Unusable("a reply with less protection than its request was ignored"));
    }

    @Test
    void aChangedEngineIsRemarked() throws IOException {
        byte[] other = HexFormat.of().parseHex("80007ed90402");
        assertThat(dialect.decode(unprotected(other, PDU.REPORT, UNKNOWN_ENGINE), false))
                .isEqualTo(new Verdict.Again(Outcome.ENGINE_UNKNOWN, "the engine ID changed"));
    }

    /** An engine ID has 5 to 32 octets (SnmpEngineID, RFC 3411). */
    @Test
    void anEngineIdOfTheWrongLengthIsRefused() throws IOException {
        assertThat(dialect.decode(unprotected(new byte[4], PDU.REPORT, UNKNOWN_ENGINE), false))
                .isEqualTo(new Verdict.Refused(Outcome.ENGINE_UNKNOWN));
        assertThat(dialect.decode(unprotected(new byte[33], PDU.REPORT, UNKNOWN_ENGINE), false))
                .isEqualTo(new Verdict.Refused(Outcome.ENGINE_UNKNOWN));
    }

    @Test
    void ourOwnMessageComingBackIsNoAnswer() throws IOException {
        byte[] echo = dialect.encode(UPTIME, 0x0123_4567, false);
        assertThat(dialect.decode(echo, false)).isInstanceOf(Verdict.Unusable.class);
    }

    @Test
    void noMessageWithOneOctetChangedIsAnAnswer() {
        byte[] message = dialect.encode(UPTIME, 0x0123_4567, false);
        for (int i = 0; i < message.length; i++) {
            byte[] changed = message.clone();
            changed[i] ^= 0x11;
            assertThat(read(changed)).isNotInstanceOf(Verdict.Answer.class);
        }
    }

    /** As the loop does: what cannot be read is unusable. */
    private Verdict read(byte[] message) {
        try {
            return dialect.decode(message, false);
        } catch (IOException | RuntimeException e) {
            return new Verdict.Unusable(String.valueOf(e.getMessage()));
        }
    }
}
