package org.roundsman.snmp.plan;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.snmp4j.smi.OID;
import org.snmp4j.smi.Variable;

/** The object instances known of one device, each once. */
class SlotBook {

    private final Map<OID, Slot> slots = new HashMap<>();

    /** The slot of that instance, new when it is not known yet. */
    Slot at(OID oid) {
        return slots.computeIfAbsent(oid, Slot::new);
    }

    /** The slot of that instance, or null. */
    Slot find(OID oid) {
        return slots.get(oid);
    }

    void put(OID oid, Variable value) {
        at(oid).take(value);
    }

    /** Before everything is asked again: nothing but these has a value; counters keep their tracks. */
    void expectAllBut(Collection<Slot> asked) {
        Set<Slot> kept = new HashSet<>(asked);
        slots.values().stream().filter(slot -> !kept.contains(slot)).forEach(Slot::expect);
    }

    /** Indexes of the rows in which a column has a value, ascending. */
    List<OID> rows(OID column) {
        return slots.values().stream()
                .filter(slot -> slot.value != null && slot.oid.size() > column.size() && slot.oid.startsWith(column))
                .map(slot -> new OID(slot.oid.getValue(), column.size(), slot.oid.size() - column.size()))
                .sorted()
                .toList();
    }

    void keepOnly(Set<Slot> used) {
        slots.values().retainAll(used);
    }
}
