package org.roundsman.web.api;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.topology.PortWord;
import org.roundsman.topology.TreeNode;

/** On which port a device hangs, and the way up from there. */
@Schema(name = "DevicePort")
record DevicePortJson(
        @Schema(examples = "417") long deviceId,

        @Schema(description = "The device itself first, then what it hangs on, up to the gateway where that is known")
        List<Step> path,

        @Schema(nullable = true, description = "What a person said; it holds until it is taken back")
        Said said) {

    static DevicePortJson of(long deviceId, List<TreeNode> path, Optional<PortWord> word) {
        return new DevicePortJson(
                deviceId,
                path.stream().map(Step::of).toList(),
                word.map(Said::of).orElse(null));
    }

    /** A device on the way up. */
    @Schema(name = "DevicePortStep")
    record Step(
            @Schema(examples = "417") long deviceId,
            @Schema(examples = "Waiting room") String name,
            @Schema(examples = "access-point") String kind,
            WiringJson.Place place,

            @Schema(
                    nullable = true,
                    description = "The port of the next device on which this one hangs; null when not known")
            WiringJson.PortJson port) {

        static Step of(TreeNode node) {
            return new Step(
                    node.deviceId(),
                    node.name(),
                    Choice.word(node.kind()),
                    WiringJson.Place.of(node.place()),
                    node.port()
                            .map(port -> WiringJson.PortJson.of(port, List.of()))
                            .orElse(null));
        }
    }

    /** What a person said. */
    @Schema(name = "DevicePortSaid")
    record Said(
            @Schema(description = "As it was entered") Entry entered,

            @Schema(description = "In words", examples = "port 7 of sw-2")
            String words,

            @Schema(examples = "Wren Tolliver") String by,
            @Schema(examples = "2026-03-04T12:00:00Z") Instant at) {

        static Said of(PortWord word) {
            return new Said(Entry.of(Optional.of(word)), word.words(), word.saidBy(), word.saidAt());
        }
    }

    /** A device of the same site, and its port. */
    @Schema(name = "DevicePortPlace")
    record On(
            @Schema(required = true, examples = "412") Long deviceId,

            @Schema(
                    nullable = true,
                    description = "Number of the port, as in that device's ports; null when only the device is known",
                    examples = "7")
            Integer port) {}

    /** What a person says. */
    @Schema(name = "DevicePortEntry")
    record Entry(
            @Schema(required = true) On place,

            @Schema(maxLength = 500, description = "Why, or empty", examples = "traced with a cable tester")
            String note)
            implements ApiBody {

        static Entry of(Optional<PortWord> word) {
            return new Entry(
                    word.map(said -> new On(said.parentId(), WiringJson.number(said.port())))
                            .orElse(null),
                    word.map(PortWord::note).orElse(""));
        }

        /** Id of the device above; 0, which no device has, where none is given. */
        long parentId() {
            return place == null ? 0 : Given.or(place.deviceId(), 0L);
        }

        OptionalInt port() {
            return place == null || place.port() == null ? OptionalInt.empty() : OptionalInt.of(place.port());
        }
    }
}
