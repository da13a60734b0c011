package org.roundsman.snmp.plan;

import java.util.HashSet;
import java.util.Set;
import org.roundsman.snmp.profile.Pick;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.profile.Table;
import org.snmp4j.smi.OID;

/** Which objects and columns a profile reads. */
final class ProfileObjects {

    private ProfileObjects() {}

    static Set<OID> of(Profile profile) {
        Set<OID> objects = new HashSet<>();
        profile.scalars().forEach(measure -> objects.addAll(measure.objects()));
        for (Table table : profile.tables()) {
            table.measures().forEach(measure -> objects.addAll(measure.objects()));
            if (table.discontinuity() != null) {
                objects.add(table.discontinuity());
            }
        }
        for (Pick pick : profile.picks().values()) {
            if (pick instanceof Pick.IndexIn in) {
                objects.add(in.instance());
            } else if (pick instanceof Pick.Where where) {
                objects.addAll(where.where().keySet());
                if (where.highest() != null) {
                    objects.add(where.highest());
                }
            }
        }
        profile.selectors().stream()
                .filter(selector -> selector.answers() != null)
                .forEach(selector -> objects.add(selector.answers()));
        return objects;
    }
}
