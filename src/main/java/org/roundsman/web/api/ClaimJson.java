package org.roundsman.web.api;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimChange;
import org.roundsman.claims.ClaimDraft;

/** A claim under warranty. What was known when it was opened never changes. */
@Schema(name = "Claim")
record ClaimJson(
        @Schema(examples = "12") long id,

        @Schema(description = "opened, sent, replaced, refused or closed", examples = "sent")
        String state,

        @Schema(examples = "7") long customerId,
        @Schema(examples = "341") long unitId,

        @Schema(nullable = true, description = "The place where the unit stood", examples = "417")
        Long deviceId,

        @Schema(nullable = true, description = "The alarm that it was opened from", examples = "88")
        Long alarmId,

        @Schema(examples = "2026-03-04T12:00:00Z") Instant openedAt,
        @Schema(examples = "wren") String openedBy,

        @Schema(description = "Last change of the state", examples = "2026-03-05T09:30:00Z")
        Instant changedAt,

        @Schema(examples = "TR22-000417") String serial,
        @Schema(examples = "Tamarack Radio TR-22") String model,

        @Schema(examples = "ap-3, ceiling of floor 3, Harbour clinic")
        String place,

        @Schema(examples = "Restarts by itself") String fault,

        @Schema(examples = "36 months from purchase, advance replacement")
        String terms,

        @Schema(examples = "covered until 2027-02-28") String cover,

        @Schema(
                description = "How the cover was worked out",
                examples = "[\"bought 2024-02-29 + 36 months = 2027-02-28\"]")
        List<String> derivation,

        @Schema(description = "What is at hand to prove the purchase", examples = "[\"Purchase: order 4711\"]")
        List<String> evidence,

        @Schema(description = "What the readings said", examples = "[\"Restarted 14 times:\"]")
        List<String> failure,

        @Schema(description = "To whom it is made", examples = "Tamarack Radio")
        String party,

        @Schema(description = "Their number for it", examples = "R-20917")
        String reference,

        @Schema(nullable = true, examples = "2026-03-05") LocalDate shippedOn,
        @Schema(examples = "Parcel 00340-1") String tracking,

        @Schema(nullable = true, description = "What took its place", examples = "342")
        Long newUnitId) {

    static ClaimJson of(Claim claim) {
        Claim.Known known = claim.known();
        return new ClaimJson(
                claim.id(),
                claim.state().word(),
                claim.customerId(),
                claim.unitId(),
                orNull(claim.deviceId()),
                orNull(claim.alarmId()),
                claim.openedAt(),
                claim.openedBy(),
                claim.changedAt(),
                known.serial(),
                known.model(),
                known.place(),
                known.fault(),
                known.terms(),
                known.cover(),
                known.derivation(),
                known.evidence(),
                known.failure(),
                claim.papers().party(),
                claim.papers().reference(),
                claim.papers().shippedOn().orElse(null),
                claim.papers().tracking(),
                orNull(claim.newUnitId()));
    }

    static Long orNull(OptionalLong id) {
        return id.isPresent() ? id.getAsLong() : null;
    }

    /** What is entered: one of device, alarm and unit. */
    @Schema(name = "ClaimEntry")
    record Entry(
            @Schema(nullable = true, description = "The unit that stands there now", examples = "417")
            Long device,

            @Schema(nullable = true, description = "The unit at the device of that alarm", examples = "88")
            Long alarm,

            @Schema(nullable = true, description = "That unit, wherever it is", examples = "341")
            Long unit,

            @Schema(nullable = true, description = "Where the device tells none", examples = "TR22-000417")
            String serial,

            @Schema(description = "What is wrong, at most 2000 characters", examples = "Restarts by itself")
            String fault,

            @Schema(nullable = true, description = "To whom it is made", examples = "Tamarack Radio")
            String party)
            implements ApiBody {

        ClaimDraft draft() {
            return new ClaimDraft(device, alarm, unit, Given.text(serial), Given.text(fault), Given.text(party));
        }
    }

    /** Where it goes next. */
    @Schema(name = "ClaimMove")
    record Move(
            @Schema(
                    description = "After opened: sent, refused or closed. After sent: replaced or refused. After"
                            + " refused: sent or closed. After replaced: closed",
                    examples = "sent")
            String state,

            @Schema(nullable = true, examples = "Parcel handed over at 16:00")
            String note)
            implements ApiBody {}

    /** What passes between us and the maker or supplier; all of it is replaced. */
    @Schema(name = "ClaimPaperwork")
    record Paperwork(
            @Schema(nullable = true, examples = "Tamarack Radio")
            String party,

            @Schema(nullable = true, examples = "R-20917") String reference,

            @Schema(nullable = true, examples = "2026-03-05")
            LocalDate shippedOn,

            @Schema(nullable = true, examples = "Parcel 00340-1")
            String tracking)
            implements ApiBody {

        Claim.Papers papers() {
            return new Claim.Papers(
                    Given.text(party), Given.text(reference), Optional.ofNullable(shippedOn), Given.text(tracking));
        }
    }

    /** A change of a claim's state, or a note. */
    @Schema(name = "ClaimChange")
    record Change(
            @Schema(examples = "31") long id,
            @Schema(examples = "2026-03-05T09:30:00Z") Instant at,
            @Schema(examples = "wren") String by,

            @Schema(nullable = true, description = "Null when it was opened", examples = "opened")
            String from,

            @Schema(description = "The same as before where only something was noted", examples = "sent")
            String to,

            @Schema(examples = "Parcel handed over at 16:00")
            String note) {

        static Change of(ClaimChange change) {
            return new Change(
                    change.id(),
                    change.at(),
                    change.by(),
                    change.from().map(state -> state.word()).orElse(null),
                    change.to().word(),
                    change.note());
        }
    }
}
