package org.roundsman.profiles;

import java.util.List;
import org.roundsman.profiles.ProfileCases.CaseOutcome;
import org.roundsman.snmp.ProfileFault;

/**
 * What putting a version in use would bring about.
 *
 * @param faults what keeps it from being used at all
 * @param replaces where the profile comes from that it would take the place of, such as {@code shipped}; or empty
 * @param devices those that are read by it now or would be, as far as is known; never more than {@link #MOST_DEVICES}
 * @param deviceCount how many there are in all
 * @param perhapsCount devices of which their sysObjectID does not tell
 * @param cases test cases to which it applies or in which something differs
 */
public record Consequences(
        ProfileVersion version,
        List<ProfileFault> faults,
        String replaces,
        List<AffectedDevice> devices,
        int deviceCount,
        int perhapsCount,
        List<CaseOutcome> cases) {

    /** More devices are counted and not listed. */
    public static final int MOST_DEVICES = 200;

    /**
     * A device that is read by the profile, or would be.
     *
     * @param certain whether its sysObjectID alone tells; else it depends on what it answers
     */
    public record AffectedDevice(
            long id, String name, String site, String customer, String objectId, boolean certain) {}

    /** Whether test cases would end otherwise than expected. */
    public boolean differs() {
        return cases.stream().anyMatch(outcome -> !outcome.same());
    }
}
