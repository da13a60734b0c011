package org.roundsman.snmp.profile;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.snmp.NamedNotification;
import org.snmp4j.smi.OID;

/**
 * How a kind of device is read. Immutable.
 *
 * @param about one line for people
 * @param selectors any one of them selects it; none at all selects it for every device
 * @param notifications what such devices send by themselves
 */
public record Profile(
        String name,
        String about,
        List<Selector> selectors,
        Map<String, Pick> picks,
        List<Measure> scalars,
        List<Table> tables,
        List<NamedNotification> notifications) {

    /**
     * When a profile applies: all that is given must hold.
     *
     * @param objectId beginning of the device's sysObjectID, or null
     * @param answers an object, or the beginning of some, that the device must have, or null
     * @param kind what such a device is, or null
     */
    public record Selector(OID objectId, OID answers, String kind) {

        boolean fits(OID sysObjectId, Set<OID> answering) {
            return (objectId == null || sysObjectId != null && sysObjectId.startsWith(objectId))
                    && (answers == null || answering.contains(answers));
        }

        /** A longer object ID says more than a shorter one, and any says more than what is answered. */
        int weight() {
            return (objectId == null ? 0 : 2 * objectId.size()) + (answers == null ? 0 : 1);
        }
    }

    /** How specific this profile is for a device: -1 when it does not apply, 0 when it applies to all. */
    public int fit(OID sysObjectId, Set<OID> answering) {
        if (selectors.isEmpty()) {
            return 0;
        }
        return selectors.stream()
                .filter(s -> s.fits(sysObjectId, answering))
                .mapToInt(Selector::weight)
                .max()
                .orElse(-1);
    }

    /** What a device with that sysObjectID is, when this profile says so; the longest match counts. */
    public Optional<String> kind(OID sysObjectId) {
        return selectors.stream()
                .filter(s -> s.kind() != null)
                .filter(s -> s.objectId() == null || sysObjectId != null && sysObjectId.startsWith(s.objectId()))
                .max(Comparator.comparingInt(Selector::weight))
                .map(Selector::kind);
    }
}
