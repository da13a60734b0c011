package org.roundsman.web.api;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.profiles.Consequences;
import org.roundsman.profiles.ProfileCases;

/** What putting a version of a profile in use would bring about. */
@Schema(name = "ProfileConsequences")
record ConsequencesJson(
        @Schema(description = "What keeps it from being used at all")
        List<ProfileJson.Fault> faults,

        @Schema(description = "Where the profile comes from whose place it takes, or empty", examples = "shipped")
        String replaces,

        @Schema(description = "How many devices are read by it or would be, as far as is known", examples = "12")
        int deviceCount,

        @Schema(description = "Of how many of them that depends on what they answer", examples = "1")
        int perhapsCount,

        @Schema(description = "Those devices, 200 at most") List<Device> devices,

        @Schema(description = "Test cases to which it applies or in which something differs")
        List<Case> cases) {

    static ConsequencesJson of(Consequences what) {
        return new ConsequencesJson(
                what.faults().stream().map(ProfileJson.Fault::of).toList(),
                what.replaces(),
                what.deviceCount(),
                what.perhapsCount(),
                what.devices().stream().map(Device::of).toList(),
                what.cases().stream().map(Case::of).toList());
    }

    /** A device that is read by the profile, or would be. */
    @Schema(name = "ProfileDevice")
    record Device(
            @Schema(examples = "417") long id,
            @Schema(examples = "Waiting room") String name,
            @Schema(examples = "Harbour clinic") String site,
            @Schema(examples = "Pebblegate Dental") String customer,

            @Schema(description = "Its sysObjectID alone tells")
            boolean certain) {

        static Device of(Consequences.AffectedDevice device) {
            return new Device(device.id(), device.name(), device.site(), device.customer(), device.certain());
        }
    }

    /** How a test case ends. */
    @Schema(name = "ProfileCase")
    record Case(
            @Schema(description = "The stored walk", examples = "9")
            long walkId,

            @Schema(examples = "Loft") String name,

            @Schema(description = "The profile applies to it")
            boolean applies,

            @Schema(description = "None where all is as expected")
            List<Difference> differences) {

        static Case of(ProfileCases.CaseOutcome outcome) {
            return new Case(
                    outcome.walk().id(),
                    outcome.walk().name(),
                    outcome.applies(),
                    outcome.differences().stream().map(Difference::of).toList());
        }
    }

    /** A result that is not what was expected. */
    @Schema(name = "ProfileDifference")
    record Difference(
            @Schema(examples = "radio 1") String who,
            @Schema(examples = "radio.clients") String key,

            @Schema(description = "Empty where nothing was", examples = "11")
            String expected,

            @Schema(description = "Empty where nothing is", examples = "12")
            String found) {

        static Difference of(ProfileCases.Difference one) {
            return new Difference(one.who(), one.key(), one.expected(), one.found());
        }
    }
}
