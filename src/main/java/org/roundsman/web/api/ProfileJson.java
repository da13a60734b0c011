package org.roundsman.web.api;

import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.profiles.ProfileVersion;
import org.roundsman.profiles.WrittenProfile;
import org.roundsman.snmp.ProfileFault;

/** A profile that people wrote here. */
@Schema(name = "Profile")
record ProfileJson(
        @Schema(examples = "4") long id,
        @Schema(examples = "tidewater-ap") String name,

        @Schema(description = "Number of its latest version", examples = "3")
        int latest,

        @Schema(nullable = true, description = "Number of the version in use; null where none is", examples = "2")
        Integer inUse,

        @Schema(description = "Who saved the latest version", examples = "wren")
        String author,

        @Schema(description = "When", examples = "2026-03-04T12:00:00Z")
        Instant at,

        @Schema(description = "Latest first; left empty in lists")
        List<Line> versions) {

    static ProfileJson of(WrittenProfile profile, List<ProfileVersion> versions) {
        return new ProfileJson(
                profile.id(),
                profile.name(),
                profile.latest(),
                profile.inUse().orElse(null),
                profile.author(),
                profile.at(),
                versions.stream().map(Line::of).toList());
    }

    /** A version in lists. */
    @Schema(name = "ProfileVersionLine")
    record Line(
            @Schema(examples = "2") int number,

            @Schema(examples = "clients of the second radio")
            String note,

            @Schema(examples = "wren") String author,
            @Schema(examples = "2026-03-04T12:00:00Z") Instant at,

            @Schema(nullable = true, description = "When it was first put in use", examples = "2026-03-04T12:30:00Z")
            Instant firstUsed,

            @Schema(description = "How many faults keep it from being used", examples = "0")
            int faults) {

        static Line of(ProfileVersion version) {
            return new Line(
                    version.number(),
                    version.note(),
                    version.author(),
                    version.at(),
                    version.firstUsed().orElse(null),
                    version.faults().size());
        }
    }

    /** One saved text. */
    @Schema(name = "ProfileVersion")
    record Version(
            @Schema(examples = "4") long profileId,
            @Schema(examples = "tidewater-ap") String name,
            @Schema(examples = "2") int number,

            @Schema(description = "YAML", examples = "profile: tidewater-ap")
            String text,

            @Schema(examples = "clients of the second radio")
            String note,

            @Schema(examples = "wren") String author,
            @Schema(examples = "2026-03-04T12:00:00Z") Instant at,

            @Schema(nullable = true, description = "When it was first put in use", examples = "2026-03-04T12:30:00Z")
            Instant firstUsed,

            @Schema(description = "What keeps it from being used")
            List<Fault> faults) {

        static Version of(ProfileVersion version) {
            return new Version(
                    version.profileId(),
                    version.name(),
                    version.number(),
                    version.text(),
                    version.note(),
                    version.author(),
                    version.at(),
                    version.firstUsed().orElse(null),
                    version.faults().stream().map(Fault::of).toList());
        }
    }

    /** Something wrong with a text. */
    @Schema(name = "ProfileFault")
    record Fault(
            @Schema(description = "From 1; 0 where no line is to blame", examples = "5")
            int line,

            @Schema(description = "The key in question, or empty", examples = "tables[1].entry")
            String key,

            @Schema(
                    description = "What is wrong, and what would be right",
                    examples = "must be an OID such as 1.3.6.1.4.1.32473.1")
            String reason) {

        static Fault of(ProfileFault fault) {
            return new Fault(fault.line(), fault.key(), fault.text());
        }
    }

    /** A text to be looked at. */
    @Schema(name = "ProfileCheckEntry")
    record CheckEntry(
            @Schema(required = true, description = "YAML", examples = "profile: tidewater-ap")
            String text) implements ApiBody {}

    /** All that is wrong with a text. */
    @Schema(name = "ProfileCheck")
    record Check(
            @Schema(description = "By line; none where it could be used")
            List<Fault> faults) {}

    /** A new profile. */
    @Schema(name = "ProfileEntry")
    record Entry(
            @Schema(required = true, description = "YAML; says the profile's name", examples = "profile: tidewater-ap")
            String text,

            @Schema(maxLength = 500, examples = "first try") String note)
            implements ApiBody {}

    /** The next version of a profile. */
    @Schema(name = "ProfileVersionEntry")
    record VersionEntry(
            @Schema(required = true, description = "YAML; says the same name", examples = "profile: tidewater-ap")
            String text,

            @Schema(maxLength = 500, examples = "clients of the second radio")
            String note,

            @Schema(
                    required = true,
                    description = "The latest version when the change was begun, so that nobody's is overwritten",
                    examples = "2")
            Integer basedOn)
            implements ApiBody {}

    /** Which version is to be used. */
    @Schema(name = "ProfileUseEntry")
    record UseEntry(
            @Schema(required = true, examples = "3") Integer version,

            @Schema(
                    description =
                            "Test cases that end otherwise than expected were looked at, and are right as they are"
                                    + " now; false unless said",
                    examples = "false")
            Boolean accept)
            implements ApiBody {}

    /** Lines end as in files, as those that come from the editor do. */
    static String lines(String text) {
        return Given.text(text).replace("\r\n", "\n");
    }
}
