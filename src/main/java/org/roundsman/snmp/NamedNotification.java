package org.roundsman.snmp;

import java.util.List;

/**
 * A notification that has a name.
 *
 * @param oid its snmpTrapOID in dotted numbers
 * @param title what a person reads
 * @param shown variables to show under a name, in this order
 */
public record NamedNotification(String oid, String title, List<Shown> shown) {

    public NamedNotification {
        shown = List.copyOf(shown);
    }

    /**
     * One variable to show.
     *
     * @param oid the object, with or without the instance at its end
     */
    public record Shown(String name, String oid) {

        /** Whether a variable of that name is meant. */
        public boolean fits(String variable) {
            return variable.equals(oid) || variable.startsWith(oid + ".");
        }
    }
}
