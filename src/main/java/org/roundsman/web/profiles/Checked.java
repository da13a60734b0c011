package org.roundsman.web.profiles;

import java.util.List;
import org.roundsman.profiles.WrittenProfiles;
import org.roundsman.snmp.ProfileFault;
import org.roundsman.web.page.Words;

/**
 * What is wrong with a text, as the editor shows it.
 *
 * @param replaces a sentence about the profile that it would take the place of, or empty
 */
record Checked(List<ProfileFault> faults, String replaces) {

    static Checked of(String text, org.roundsman.profiles.ProfilesInUse inUse) {
        String replaces = WrittenProfiles.nameIn(text)
                .flatMap(name -> inUse.withoutWritten()
                        .text(name)
                        .map(other -> "In use, it takes the place of the profile " + name + " that is "
                                + other.origin().word() + "."))
                .orElse("");
        return new Checked(WrittenProfiles.check(text), replaces);
    }

    public boolean good() {
        return faults.isEmpty();
    }

    public String count() {
        return Words.many(faults.size(), "fault", "faults");
    }
}
