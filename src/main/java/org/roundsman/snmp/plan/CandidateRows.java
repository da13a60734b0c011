package org.roundsman.snmp.plan;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.roundsman.measure.Subject;
import org.roundsman.snmp.Walk;
import org.roundsman.snmp.decode.Texts;
import org.roundsman.snmp.profile.Measure;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.Table;
import org.roundsman.snmp.profile.Target;
import org.snmp4j.smi.OID;

/** Which rows of a walk a line of a profile is about, and what each row is. */
final class CandidateRows {

    private final Survey.Result found;
    private final SlotBook book = new SlotBook();
    private final Map<Profile, Numbering> numberings = new HashMap<>();
    private final Map<OID, String> ssids = new HashMap<>();

    /**
     * One row.
     *
     * @param who {@code device}, {@code radio 1}, {@code network Guest (1.2)}
     */
    record Row(String who, List<OID> oids) {}

    CandidateRows(Survey.Result found, Walk walk) {
        this.found = found;
        Set<OID> columns = new HashSet<>();
        found.profiles().forEach(profile -> columns.addAll(ProfileObjects.of(profile)));
        for (OID column : columns) {
            for (int i = walk.from(column); i < walk.size() && walk.oid(i).startsWith(column); i++) {
                book.put(walk.oid(i), walk.value(i));
            }
        }
        for (Profile profile : found.profiles()) {
            numberings.put(profile, Numbering.of(profile, book));
            profile.tables().stream()
                    .flatMap(table -> table.measures().stream())
                    .filter(measure -> measure.target() == Target.Name.SSID)
                    .map(measure -> measure.parts().get(0))
                    .forEach(column -> book.rows(column)
                            .forEach(row ->
                                    ssids.putIfAbsent(row, Texts.of(book.find(new OID(column).append(row)).value))));
        }
    }

    List<Row> of(Profile profile, Table table, Measure measure) {
        if (table.pick() != null) {
            OID index = found.picked().get(table.pick());
            return index == null ? List.of() : List.of(new Row("device", oids(measure, index)));
        }
        List<OID> indexes = book.rows(measure.parts().get(0));
        if (table.fold() != null) {
            OID column = measure.parts().get(0);
            List<OID> all =
                    indexes.stream().map(row -> new OID(column).append(row)).toList();
            return all.isEmpty() ? List.of() : List.of(new Row("device", all));
        }
        return indexes.stream()
                .flatMap(index -> who(profile, table, index).map(who -> new Row(who, oids(measure, index))))
                .toList();
    }

    private Stream<String> who(Profile profile, Table table, OID index) {
        if (table.rows() == Subject.NETWORK) {
            String ssid = ssids.getOrDefault(index, "");
            return Stream.of(
                    "network " + (ssid.isEmpty() ? "without a name" : ssid) + " (" + index.toDottedString() + ")");
        }
        int radio = numberings.get(profile).radio(table, index);
        return radio < 1 ? Stream.empty() : Stream.of("radio " + radio);
    }

    private static List<OID> oids(Measure measure, OID index) {
        return measure.objects().stream()
                .map(column -> new OID(column).append(index))
                .toList();
    }
}
