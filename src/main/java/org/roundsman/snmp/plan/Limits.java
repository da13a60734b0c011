package org.roundsman.snmp.plan;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.snmp4j.smi.OID;

/** What one device's agent can take, learnt from its replies. */
final class Limits {

    /** An Ethernet frame's payload less IP, UDP and the SNMPv3 wrapping: a reply within it is not fragmented. */
    static final int REPLY_OCTETS = 1_360;

    private static final int FIRST_GUESS_OF_VARIABLE = 36;
    private static final int FIRST_REPETITIONS = 8;
    private static final int MOST_REPETITIONS = 60;

    private int mostVariables = Integer.MAX_VALUE;
    private double variableOctets = FIRST_GUESS_OF_VARIABLE;
    private final Map<OID, Integer> rows = new HashMap<>();
    /** Instances that an SNMPv1 agent refused with noSuchName. */
    private final Set<OID> refused = new HashSet<>();

    int mostVariables() {
        return mostVariables;
    }

    /** The agent said tooBig to so many variables. */
    void tooBig(int variables) {
        mostVariables = Math.max(1, Math.min(mostVariables, variables / 2));
    }

    /** Rows to ask for at once: what fits, and no more than the table is known to have, and one to see its end. */
    int repetitions(OID table, int columns, int read) {
        int fits = (int) (Math.min(REPLY_OCTETS / variableOctets, mostVariables) / columns);
        int wanted = rows.containsKey(table) ? rows.get(table) + 1 - read : read == 0 ? FIRST_REPETITIONS : fits;
        return Math.max(1, Math.min(MOST_REPETITIONS, Math.min(fits, Math.max(wanted, 2))));
    }

    void sawReply(int octets, int variables) {
        if (variables >= 4) {
            variableOctets = Math.max(12, (double) octets / variables);
        }
    }

    void sawTable(OID table, int count) {
        rows.put(table, count);
    }

    Set<OID> refused() {
        return refused;
    }
}
