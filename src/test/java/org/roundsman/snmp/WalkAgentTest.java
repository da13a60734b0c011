package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.roundsman.snmp.walk.WalkAgent;
import org.snmp4j.PDU;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.VariableBinding;

/** RFC 3416 sections 4.2.1 to 4.2.3; the GetBulk exchange is the one that section 4.2.3.1 shows. */
class WalkAgentTest {

    private final WalkAgent agent = new WalkAgent(WalkText.read("""
        .1.3.6.1.2.1.1.3.0 = Timeticks: (123456) 0:20:34.56
        .1.3.6.1.2.1.4.22.1.2.1.9.2.3.4 = Hex-STRING: 00 00 10 54 32 10
        .1.3.6.1.2.1.4.22.1.2.1.10.0.0.51 = Hex-STRING: 00 00 10 01 23 45
        .1.3.6.1.2.1.4.22.1.2.2.10.0.0.15 = Hex-STRING: 00 00 10 98 76 54
        .1.3.6.1.2.1.4.22.1.4.1.9.2.3.4 = INTEGER: 3
        .1.3.6.1.2.1.4.22.1.4.1.10.0.0.51 = INTEGER: 4
        .1.3.6.1.2.1.4.22.1.4.2.10.0.0.15 = INTEGER: 3
        """).walk());

    private PDU ask(int type, int nonRepeaters, int repetitions, String... oids) {
        PDU pdu = new PDU();
        pdu.setType(type);
        if (type == PDU.GETBULK) {
            pdu.setNonRepeaters(nonRepeaters);
            pdu.setMaxRepetitions(repetitions);
        }
        for (String oid : oids) {
            pdu.add(new VariableBinding(new OID(oid)));
        }
        return agent.answer(pdu);
    }

    @Test
    void aGetTellsMissingObjectsFromMissingInstances() {
        PDU reply = ask(PDU.GET, 0, 0, "1.3.6.1.2.1.1.3.0", "1.3.6.1.2.1.1.3.1", "1.3.6.1.2.1.1.9.0");
        assertThat(reply.get(0).toValueString()).isEqualTo("0:20:34.56");
        assertThat(reply.get(1).getSyntax()).isEqualTo(org.snmp4j.smi.SMIConstants.EXCEPTION_NO_SUCH_INSTANCE);
        assertThat(reply.get(2).getSyntax()).isEqualTo(org.snmp4j.smi.SMIConstants.EXCEPTION_NO_SUCH_OBJECT);
    }

    @Test
    void aGetBulkGoesRowByRow() {
        PDU reply = ask(PDU.GETBULK, 1, 2, "1.3.6.1.2.1.1.3", "1.3.6.1.2.1.4.22.1.2", "1.3.6.1.2.1.4.22.1.4");
        assertThat(reply.getVariableBindings().stream().map(b -> b.getOid().toDottedString()))
                .containsExactly(
                        "1.3.6.1.2.1.1.3.0",
                        "1.3.6.1.2.1.4.22.1.2.1.9.2.3.4",
                        "1.3.6.1.2.1.4.22.1.4.1.9.2.3.4",
                        "1.3.6.1.2.1.4.22.1.2.1.10.0.0.51",
                        "1.3.6.1.2.1.4.22.1.4.1.10.0.0.51");
    }

    @Test
    void theEndOfTheViewKeepsTheNameThatWasAsked() {
        PDU reply = ask(PDU.GETNEXT, 0, 0, "1.3.6.1.2.1.4.22.1.4.2.10.0.0.15");
        assertThat(reply.get(0).getSyntax()).isEqualTo(org.snmp4j.smi.SMIConstants.EXCEPTION_END_OF_MIB_VIEW);
        assertThat(reply.get(0).getOid().toDottedString()).isEqualTo("1.3.6.1.2.1.4.22.1.4.2.10.0.0.15");
        assertThat(ask(PDU.GETBULK, 0, 50, "1.3.6.1.2.1.4.22.1.4.1.10.0.0.51").size())
                .isEqualTo(2);
    }
}
