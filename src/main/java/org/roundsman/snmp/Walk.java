package org.roundsman.snmp;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.roundsman.snmp.decode.RawAnswers;
import org.roundsman.snmp.walk.WalkPrinter;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.OctetString;
import org.snmp4j.smi.TimeTicks;
import org.snmp4j.smi.Variable;
import org.snmp4j.smi.VariableBinding;

/** Every variable of a device at one time, in the order of their names. Immutable; safe to share between threads. */
public final class Walk {

    /** More variables than this are never taken. */
    public static final int MOST_VARIABLES = 500_000;

    private static final OID SYS_OBJECT_ID = new OID("1.3.6.1.2.1.1.2.0");
    private static final OID SYS_UP_TIME = new OID("1.3.6.1.2.1.1.3.0");
    /** sysContact, sysName and sysLocation of SNMPv2-MIB (RFC 3418): where people and places are named. */
    private static final List<OID> NAMES =
            List.of(new OID("1.3.6.1.2.1.1.4.0"), new OID("1.3.6.1.2.1.1.5.0"), new OID("1.3.6.1.2.1.1.6.0"));

    private static final RawAnswers UNNAMED = new RawAnswers(List.of(), Map.of());

    private final OID[] oids;
    private final Variable[] values;

    /** Takes over every variable. */
    public Walk(SortedMap<OID, Variable> variables) {
        if (variables.size() > MOST_VARIABLES) {
            throw new IllegalArgumentException(variables.size() + " variables, more than " + MOST_VARIABLES);
        }
        oids = variables.keySet().toArray(OID[]::new);
        values = variables.values().toArray(Variable[]::new);
    }

    /** How many variables. */
    public int size() {
        return oids.length;
    }

    /** The name at that place, from 0. */
    public OID oid(int place) {
        return oids[place];
    }

    public Variable value(int place) {
        return values[place];
    }

    /** The value of an instance, or null. */
    public Variable get(OID oid) {
        int place = Arrays.binarySearch(oids, oid);
        return place < 0 ? null : values[place];
    }

    /** The place of the first name that comes after this one; {@link #size()} when none does. */
    public int after(OID oid) {
        int place = Arrays.binarySearch(oids, oid);
        return place < 0 ? -place - 1 : place + 1;
    }

    /** The place of the first name that is this one or comes after it. */
    public int from(OID oid) {
        int place = Arrays.binarySearch(oids, oid);
        return place < 0 ? -place - 1 : place;
    }

    /** Whether there is this instance, or anything below it. */
    public boolean holds(OID oid) {
        int place = from(oid);
        return place < size() && oids[place].startsWith(oid);
    }

    /** One variable as people read it. */
    public RawAnswer shown(int place) {
        return UNNAMED.of(new VariableBinding(oids[place], values[place]));
    }

    /** What the device says it is, in dotted numbers; empty when it does not. */
    public String objectId() {
        return get(SYS_OBJECT_ID) instanceof OID told ? told.toDottedString() : "";
    }

    /** Its uptime in hundredths of a second, where it tells one. */
    public Optional<Long> upTime() {
        return get(SYS_UP_TIME) instanceof TimeTicks ticks ? Optional.of(ticks.getValue()) : Optional.empty();
    }

    /** The same without the values of sysContact, sysName and sysLocation. */
    public Walk withoutNames() {
        TreeMap<OID, Variable> changed = new TreeMap<>();
        for (int i = 0; i < oids.length; i++) {
            boolean named = NAMES.contains(oids[i]);
            changed.put(oids[i], named ? new OctetString("blanked out") : values[i]);
        }
        return new Walk(changed);
    }

    /** All of it in the form that net-snmp's snmpbulkwalk -On prints. */
    public String text() {
        return WalkPrinter.print(this);
    }
}
