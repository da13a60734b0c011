package org.roundsman.snmp.plan;

import java.util.List;
import org.roundsman.measure.Subject;
import org.roundsman.snmp.profile.Measure;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.Table;
import org.roundsman.snmp.profile.Table.IndexPart;
import org.snmp4j.smi.OID;

/**
 * From a row's index to a radio's number. Tables indexed by ifIndex number their radios by the order of the ifIndexes
 * in the profile's first such table about radios.
 */
final class Numbering {

    private static final int MOST = 32_767;

    private final List<Integer> interfaces;

    private Numbering(List<Integer> interfaces) {
        this.interfaces = interfaces;
    }

    static Numbering of(Profile profile, SlotBook book) {
        return profile.tables().stream()
                .filter(t -> t.rows() == Subject.RADIO && t.index().contains(IndexPart.INTERFACE))
                .findFirst()
                .map(table -> new Numbering(interfaces(table, book)))
                .orElse(new Numbering(List.of()));
    }

    private static List<Integer> interfaces(Table table, SlotBook book) {
        int place = table.index().indexOf(IndexPart.INTERFACE);
        return table.measures().stream()
                .map(Measure::parts)
                .flatMap(parts -> book.rows(parts.get(0)).stream())
                .filter(index -> index.size() > place)
                .map(index -> index.get(place))
                .distinct()
                .sorted()
                .toList();
    }

    /** The radio's number, or 0 when the row is about none. */
    int radio(Table table, OID index) {
        for (int place = 0; place < Math.min(table.index().size(), index.size()); place++) {
            int part = index.get(place);
            switch (table.index().get(place)) {
                case RADIO -> {
                    return part >= 1 && part <= MOST ? part : 0;
                }
                case INTERFACE -> {
                    return interfaces.indexOf(part) + 1;
                }
                default -> {
                    // says nothing about the radio
                }
            }
        }
        return 0;
    }
}
