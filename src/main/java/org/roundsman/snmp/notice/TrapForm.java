package org.roundsman.snmp.notice;

import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snmp4j.PDU;
import org.snmp4j.PDUv1;
import org.snmp4j.smi.IpAddress;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.VariableBinding;

/**
 * A notification in the form of SNMPv2 (RFC 3416), whatever its version on the wire.
 *
 * @param origin where it came from in the first place, as it says of itself, or null
 * @param variables without sysUpTime and snmpTrapOID
 */
record TrapForm(OID oid, TimeTicks uptime, InetAddress origin, List<VariableBinding> variables) {

    /** SNMPv2-MIB (RFC 3418). */
    static final OID SYS_UP_TIME = new OID("1.3.6.1.2.1.1.3.0");

    static final OID TRAP_OID = new OID("1.3.6.1.6.3.1.1.4.1.0");

    private static final OID TRAP_ENTERPRISE = new OID("1.3.6.1.6.3.1.1.4.3.0");

    /** snmpTraps; its members 1 to 6 are the generic traps 0 to 5 of SNMPv1. */
    private static final OID TRAPS = new OID("1.3.6.1.6.3.1.1.5");

    /** snmpTrapAddress of SNMP-COMMUNITY-MIB (RFC 3584): set by whoever passes a notification on. */
    private static final OID TRAP_ADDRESS = new OID("1.3.6.1.6.3.18.1.3.0");

    private static final int ENTERPRISE_SPECIFIC = 6;

    /** A trap of SNMPv1 as RFC 3584 section 3.1 makes it; empty when its generic number is none. */
    static Optional<TrapForm> of(PDUv1 trap) {
        return oid(trap.getEnterprise(), trap.getGenericTrap(), trap.getSpecificTrap())
                .map(oid -> {
                    List<VariableBinding> variables = new ArrayList<>(trap.getVariableBindings());
                    if (find(variables, TRAP_ENTERPRISE).isEmpty()) {
                        variables.add(new VariableBinding(TRAP_ENTERPRISE, trap.getEnterprise()));
                    }
                    return new TrapForm(
                            oid, new TimeTicks(trap.getTimestamp()), address(trap.getAgentAddress()), variables);
                });
    }

    /** snmpTrapOID of a trap of SNMPv1. */
    static Optional<OID> oid(OID enterprise, int generic, int specific) {
        if (generic == ENTERPRISE_SPECIFIC) {
            return Optional.of(new OID(enterprise).append(0).append(specific));
        }
        return generic >= 0 && generic < ENTERPRISE_SPECIFIC
                ? Optional.of(new OID(TRAPS).append(generic + 1))
                : Optional.empty();
    }

    /** A trap or inform of SNMPv2; empty when it does not say what it notifies of. */
    static Optional<TrapForm> of(PDU pdu) {
        List<VariableBinding> variables = new ArrayList<>(pdu.getVariableBindings());
        Optional<OID> oid = find(variables, TRAP_OID)
                .filter(v -> v.getVariable() instanceof OID)
                .map(v -> (OID) v.getVariable());
        TimeTicks uptime = find(variables, SYS_UP_TIME)
                .filter(v -> v.getVariable() instanceof TimeTicks)
                .map(v -> (TimeTicks) v.getVariable())
                .orElse(new TimeTicks(0));
        InetAddress origin = find(variables, TRAP_ADDRESS)
                .filter(v -> v.getVariable() instanceof IpAddress)
                .map(v -> address((IpAddress) v.getVariable()))
                .orElse(null);
        variables.removeIf(v -> v.getOid().equals(TRAP_OID) || v.getOid().equals(SYS_UP_TIME));
        return oid.map(name -> new TrapForm(name, uptime, origin, variables));
    }

    private static Optional<VariableBinding> find(List<VariableBinding> variables, OID oid) {
        return variables.stream().filter(v -> v.getOid().equals(oid)).findFirst();
    }

    private static InetAddress address(IpAddress told) {
        InetAddress address = told == null ? null : told.getInetAddress();
        return address == null || address.isAnyLocalAddress() ? null : address;
    }
}
