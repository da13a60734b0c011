package org.roundsman.web.claims;

import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimChange;
import org.roundsman.claims.ClaimState;
import org.roundsman.web.page.Words;

/** Says in words what claims hold. */
final class ClaimWords {

    private ClaimWords() {}

    /**
     * A claim in a list.
     *
     * @param age since when it is open, in words; empty when it is closed
     * @param standing since when it is in its state, in words
     */
    record Line(
            long id,
            long unitId,
            String serial,
            String model,
            long customerId,
            String customer,
            String place,
            String state,
            String age,
            String standing,
            String party,
            String reference) {}

    static Line line(Claim claim, Instant now) {
        Claim.Known known = claim.known();
        return new Line(
                claim.id(),
                claim.unitId(),
                known.serial(),
                known.model(),
                claim.customerId(),
                claim.customer(),
                known.place(),
                claim.state().word(),
                claim.unfinished() ? Words.length(java.time.Duration.between(claim.openedAt(), now)) : "",
                "for " + Words.length(java.time.Duration.between(claim.changedAt(), now)),
                claim.papers().party(),
                claim.papers().reference());
    }

    /** A change in the history of a claim. */
    record Change(String at, String by, String what, String note) {}

    static Change change(ClaimChange change, Claim claim) {
        boolean moved = change.from().filter(from -> from == change.to()).isEmpty();
        return new Change(
                Words.moment(change.at(), claim.known().zone()),
                change.by(),
                moved ? change.to().word() : "noted",
                change.note());
    }

    /** A step that may come next: the state, and what the button says. */
    record Step(String state, String text) {}

    static List<Step> steps(ClaimState state) {
        return state.next().stream().map(ClaimWords::step).toList();
    }

    private static Step step(ClaimState to) {
        return new Step(
                to.word(),
                switch (to) {
                    case OPENED -> "Open";
                    case SENT -> "It was sent";
                    case REPLACED -> "They replaced it";
                    case REFUSED -> "They refused it";
                    case CLOSED -> "Close the claim";
                });
    }

    /** 0 where there is none: templates ask for that. */
    static long orZero(OptionalLong id) {
        return id.orElse(0);
    }
}
