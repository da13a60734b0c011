package org.roundsman.web.api;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.discovery.FoundDevice;
import org.roundsman.discovery.Review;
import org.roundsman.discovery.SweepReview.Unanswered;
import org.roundsman.fleet.DeviceKind;

/** A device as the latest sweep met it, held against the fleet as it is now. */
@Schema(name = "Finding")
record FindingJson(
        @Schema(examples = "880") long id,

        @Schema(description = "The one that counts comes first")
        List<Address> addresses,

        @Schema(
                description =
                        "new; known; new-address: at this site, and its address changed; moved: at another site of"
                                + " this customer; doubtful: a person decides; refused: it refused our credentials",
                examples = "new")
        String standing,

        @Schema(examples = "Nothing of this customer is known to be it.")
        String reason,

        @Schema(description = "What speaks for it and against it")
        List<String> evidence,

        @Schema(description = "Whether it can be adopted now")
        boolean adoptable,

        @Schema(nullable = true) Instant adoptedAt,

        @Schema(nullable = true, description = "The device that it is, or seems to be", examples = "417")
        Long deviceId,

        @Schema(nullable = true, description = "The credentials that let us in", examples = "5")
        Long credentialId,

        @Schema(nullable = true, description = "Its model among those we know", examples = "9")
        Long modelId,

        @Schema(
                description = "What it says about itself, such as serial or base-mac",
                examples = "{\"serial\": \"TR22-000417\"}")
        Map<String, String> facts,

        @Schema(description = "What was odd, or empty", examples = "")
        String remark,

        @Schema(examples = "2026-03-04T09:31:09Z") Instant heardAt,

        @Schema(description = "What was entered for it, or is proposed")
        Proposal proposal) {

    /** One address of it. */
    @Schema(name = "FindingAddress")
    record Address(
            @Schema(examples = "192.0.2.4") String host,
            @Schema(examples = "161") int port) {}

    /** How it would be adopted. */
    @Schema(name = "FindingProposal")
    record Proposal(
            @Schema(examples = "Hall AP") String name,

            @Schema(nullable = true, examples = "access-point")
            String kind,

            @Schema(examples = "ceiling") String place) {}

    /** A device of the site that the sweep did not meet. */
    @Schema(name = "Unanswered")
    record Missed(
            @Schema(examples = "418") long deviceId,
            @Schema(examples = "Stairs AP") String name,
            @Schema(examples = "192.0.2.9") String host,
            @Schema(examples = "161") int port,

            @Schema(examples = "its address and port are not among those of this sweep")
            String reason) {

        static Missed of(Unanswered device) {
            return new Missed(device.deviceId(), device.name(), device.host(), device.port(), device.reason());
        }
    }

    /** What to adopt. */
    @Schema(name = "Adoption")
    record Adopting(List<Line> lines) implements ApiBody {}

    /** One finding to adopt; fields that are left out are taken from its proposal. */
    @Schema(name = "AdoptionLine")
    record Line(
            @Schema(description = "Id of the finding", examples = "880")
            long finding,

            @Schema(examples = "Waiting room") String name,

            @Schema(description = "access-point, network-switch or gateway", examples = "access-point")
            String kind,

            @Schema(examples = "ceiling") String place) {

        Review onto(Review proposal) {
            return new Review(
                    finding,
                    true,
                    Given.or(name, proposal.name()),
                    kind == null ? proposal.kind() : Choice.of(DeviceKind.class, kind),
                    Given.or(place, proposal.place()));
        }
    }

    static FindingJson of(FoundDevice found) {
        Map<String, String> facts = new TreeMap<>();
        found.facts().values().forEach((fact, value) -> facts.put(Choice.word(fact), value));
        Review entry = found.entry();
        return new FindingJson(
                found.findingId(),
                found.at().stream().map(a -> new Address(a.host(), a.port())).toList(),
                Choice.word(found.decision().standing()),
                found.decision().reason(),
                found.decision().evidence(),
                found.isOpen(),
                found.adoptedAt().orElse(null),
                found.decision().deviceId(),
                found.credentialId(),
                found.modelId(),
                facts,
                found.remark(),
                found.heardAt(),
                new Proposal(entry.name(), entry.kind() == null ? null : Choice.word(entry.kind()), entry.place()));
    }
}
