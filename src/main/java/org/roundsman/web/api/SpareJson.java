package org.roundsman.web.api;

import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.claims.Fate;
import org.roundsman.claims.Spare;
import org.roundsman.claims.SpareDraft;
import org.roundsman.claims.StoreRoom;
import org.roundsman.fleet.InputRejected;

/** A unit in store, in a room or at a site. */
@Schema(name = "Spare")
record SpareJson(
        @Schema(examples = "5") long id,
        @Schema(examples = "342") long unitId,
        @Schema(examples = "TR22-000900") String serial,
        @Schema(nullable = true, examples = "2") Long modelId,
        @Schema(examples = "Tamarack Radio TR-22") String model,

        @Schema(nullable = true, description = "Whose it is; null for the firm's own", examples = "7")
        Long customerId,

        @Schema(nullable = true, description = "The store room where it lies", examples = "3")
        Long storeRoomId,

        @Schema(nullable = true, description = "The site where it lies", examples = "21")
        Long siteId,

        @Schema(description = "Where it lies, in words", examples = "Van 2")
        String where,

        @Schema(examples = "2026-03-04T12:00:00Z") Instant since,
        @Schema(examples = "Box opened") String note,

        @Schema(description = "What was bought with it, without a price", examples = "Harbour Supply, order 4711")
        String purchase) {

    static SpareJson of(Spare spare) {
        return new SpareJson(
                spare.id(),
                spare.unit().id(),
                spare.unit().serial(),
                ClaimJson.orNull(spare.unit().modelId()),
                spare.unit().model(),
                ClaimJson.orNull(spare.unit().owner()),
                ClaimJson.orNull(spare.roomId()),
                ClaimJson.orNull(spare.siteId()),
                spare.where(),
                spare.since(),
                spare.note(),
                spare.purchase());
    }

    /** What is entered: it lies in a room or at a site. */
    @Schema(name = "SpareEntry")
    record Entry(
            @Schema(examples = "TR22-000900") String serial,
            @Schema(nullable = true, examples = "2") Long modelId,
            @Schema(nullable = true, examples = "3") Long storeRoomId,
            @Schema(nullable = true, examples = "21") Long siteId,

            @Schema(nullable = true, examples = "Box opened")
            String note)
            implements ApiBody {

        SpareDraft draft() {
            return new SpareDraft(Given.text(serial), modelId, storeRoomId, siteId, Given.text(note));
        }
    }

    /** Where it lies from now on: a room or a site. */
    @Schema(name = "SpareMove")
    record Move(
            @Schema(nullable = true, examples = "3") Long storeRoomId,
            @Schema(nullable = true, examples = "21") Long siteId)
            implements ApiBody {}

    /** Why it leaves the store. */
    @Schema(name = "SpareLeaves")
    record Leaves(
            @Schema(nullable = true, description = "What becomes of it: sent-back or scrapped", examples = "scrapped")
            String fate,

            @Schema(examples = "Dropped from a ladder") String why)
            implements ApiBody {

        Optional<Fate> becomes() {
            if (Given.text(fate).isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(Arrays.stream(Fate.values())
                    .filter(one -> Choice.word(one).equals(fate))
                    .findFirst()
                    .orElseThrow(() -> new InputRejected(Map.of("fate", "one of: sent-back, scrapped"))));
        }
    }

    /** A room in which spares lie. */
    @Schema(name = "StoreRoom")
    record Room(
            @Schema(examples = "3") long id,
            @Schema(examples = "Van 2") String name,

            @Schema(nullable = true, description = "Whose it is; null for the firm's own", examples = "7")
            Long customerId,

            @Schema(description = "How many spares lie there", examples = "4")
            int spares,

            @Schema(examples = "Key at the office") String note) {

        static Room of(StoreRoom room) {
            return new Room(room.id(), room.name(), ClaimJson.orNull(room.customerId()), room.spares(), room.note());
        }
    }
}
