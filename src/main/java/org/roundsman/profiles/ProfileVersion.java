package org.roundsman.profiles;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.snmp.ProfileFault;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.ProfileText;
import org.roundsman.snmp.ProfileText.Origin;

/**
 * One saved text of a profile.
 *
 * @param number from 1
 * @param note what the author says about it, or empty
 * @param firstUsed when it was first put in use, if ever
 */
public record ProfileVersion(
        long profileId,
        String name,
        int number,
        String text,
        String note,
        String author,
        Instant at,
        Optional<Instant> firstUsed) {

    /** What keeps it from being used. */
    public List<ProfileFault> faults() {
        return ProfileSet.check(asText());
    }

    /** As a member of a set of profiles. */
    public ProfileText asText() {
        return new ProfileText(name, text, Origin.WRITTEN);
    }
}
