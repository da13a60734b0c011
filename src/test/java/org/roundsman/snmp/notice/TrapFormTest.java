package org.roundsman.snmp.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.snmp4j.PDU;
import org.snmp4j.PDUv1;
import org.snmp4j.smi.IpAddress;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.VariableBinding;

/** RFC 3584 section 3.1; OIDs of the generic traps from SNMPv2-MIB (RFC 3418) and IF-MIB (RFC 2863). */
class TrapFormTest {

    @ParameterizedTest
    @CsvSource({
        "0,0,1.3.6.1.6.3.1.1.5.1",
        "1,0,1.3.6.1.6.3.1.1.5.2",
        "2,0,1.3.6.1.6.3.1.1.5.3",
        "3,0,1.3.6.1.6.3.1.1.5.4",
        "4,0,1.3.6.1.6.3.1.1.5.5",
        "5,0,1.3.6.1.6.3.1.1.5.6",
        "6,17,1.3.6.1.4.1.32473.1.0.17",
        "6,0,1.3.6.1.4.1.32473.1.0.0",
        // the specific number is ignored where the trap is a generic one
        "3,99,1.3.6.1.6.3.1.1.5.4"
    })
    void version1BecomesVersion2(int generic, int specific, String oid) {
        assertThat(TrapForm.oid(new OID("1.3.6.1.4.1.32473.1"), generic, specific))
                .contains(new OID(oid));
    }

    @ParameterizedTest
    @CsvSource({"-1", "7", "2147483647"})
    void otherGenericNumbersAreNone(int generic) {
        assertThat(TrapForm.oid(new OID("1.3.6.1.4.1.32473.1"), generic, 1)).isEmpty();
    }

    /** snmpTrapEnterprise.0 is added, and agent-addr says where it came from. */
    @Test
    void theEnterpriseAndTheAgentAreKept() {
        PDUv1 trap = new PDUv1();
        trap.setType(PDU.V1TRAP);
        trap.setEnterprise(new OID("1.3.6.1.4.1.32473.1"));
        trap.setGenericTrap(2);
        trap.setAgentAddress(new IpAddress("192.0.2.9"));
        TrapForm form = TrapForm.of(trap).orElseThrow();
        assertThat(form.variables())
                .containsExactly(new VariableBinding(new OID("1.3.6.1.6.3.1.1.4.3.0"), new OID("1.3.6.1.4.1.32473.1")));
        assertThat(form.origin().getHostAddress()).isEqualTo("192.0.2.9");
    }

    @Test
    void anUnknownAgentAddressNamesNobody() {
        PDUv1 trap = new PDUv1();
        trap.setType(PDU.V1TRAP);
        trap.setEnterprise(new OID("1.3.6.1.4.1.32473.1"));
        trap.setAgentAddress(new IpAddress("0.0.0.0"));
        assertThat(TrapForm.of(trap).orElseThrow().origin()).isNull();
    }

    @Test
    void aNotificationThatDoesNotSayOfWhatIsNone() {
        PDU pdu = new PDU();
        pdu.setType(PDU.TRAP);
        pdu.add(new VariableBinding(TrapForm.SYS_UP_TIME, new org.snmp4j.smi.TimeTicks(1)));
        assertThat(TrapForm.of(pdu)).isEqualTo(Optional.empty());
    }
}
