package org.roundsman.snmp.plan;

import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.roundsman.snmp.decode.Numbers;
import org.roundsman.snmp.decode.Texts;
import org.roundsman.snmp.profile.Pick;
import org.snmp4j.smi.OID;

/** Chooses one row of a table from what a survey read. */
final class RowChoice {

    private final SlotBook book;

    RowChoice(SlotBook book) {
        this.book = book;
    }

    /** The index of the chosen row, if there is one. */
    Optional<OID> index(Pick pick) {
        if (pick instanceof Pick.IndexIn in) {
            return indexIn(in);
        }
        return where((Pick.Where) pick);
    }

    private Optional<OID> indexIn(Pick.IndexIn in) {
        Slot slot = book.find(in.instance());
        double index = slot == null || slot.value == null ? Double.NaN : Numbers.of(slot.value);
        return index >= 1 && index <= Integer.MAX_VALUE
                ? Optional.of(new OID(new int[] {(int) index}))
                : Optional.empty();
    }

    private Optional<OID> where(Pick.Where where) {
        OID lead = where.where().isEmpty()
                ? where.highest()
                : where.where().keySet().iterator().next();
        SortedMap<OID, Double> fitting = new TreeMap<>();
        book.rows(lead).forEach(index -> {
            if (where.where().entrySet().stream().allMatch(condition -> holds(condition, index))) {
                fitting.put(index, rank(where.highest(), index));
            }
        });
        return fitting.entrySet().stream()
                .reduce((best, next) -> next.getValue() > best.getValue() ? next : best)
                .map(Map.Entry::getKey);
    }

    private boolean holds(Map.Entry<OID, String> condition, OID index) {
        Slot slot = book.find(new OID(condition.getKey()).append(index));
        return slot != null && slot.value != null && Texts.of(slot.value).equals(condition.getValue());
    }

    private double rank(OID highest, OID index) {
        if (highest == null) {
            return 0;
        }
        Slot slot = book.find(new OID(highest).append(index));
        double rank = slot == null || slot.value == null ? Double.NaN : Numbers.of(slot.value);
        return Double.isNaN(rank) ? Double.NEGATIVE_INFINITY : rank;
    }
}
