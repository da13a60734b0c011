package org.roundsman.web.profiles;

import java.util.List;
import java.util.Optional;
import org.roundsman.profiles.ProfileVersion;
import org.roundsman.profiles.WrittenProfile;
import org.roundsman.web.page.Words;

/** One version in the list of a profile's versions. */
record VersionLine(
        int number,
        String author,
        String at,
        String note,
        boolean inUse,
        boolean usedBefore,
        String faults,
        int before) {

    static List<VersionLine> of(WrittenProfile profile, List<ProfileVersion> versions) {
        return versions.stream()
                .map(version -> {
                    int faults = version.faults().size();
                    return new VersionLine(
                            version.number(),
                            version.author(),
                            Times.of(version.at()),
                            version.note(),
                            profile.inUse().equals(Optional.of(version.number())),
                            version.firstUsed().isPresent(),
                            faults == 0 ? "" : Words.many(faults, "fault", "faults"),
                            version.number() - 1);
                })
                .toList();
    }
}
