package org.roundsman.snmp.profile;

import java.util.Map;
import org.snmp4j.smi.OID;

/** How one row of a table is chosen. */
public sealed interface Pick {

    /** The row whose index is the value of a scalar. */
    record IndexIn(OID instance) implements Pick {}

    /**
     * The first row (lowest index) in which columns have the given values; or, among those, the one with the highest
     * value in one column.
     *
     * @param where expected raw values by column, as text; dotted numbers for object identifiers
     * @param highest null for the first row
     */
    record Where(OID entry, Map<OID, String> where, OID highest) implements Pick {}
}
