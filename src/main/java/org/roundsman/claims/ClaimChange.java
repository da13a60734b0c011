package org.roundsman.claims;

import java.time.Instant;
import java.util.Optional;

/**
 * A change of a claim's state, or a note.
 *
 * @param from empty when the claim was opened
 * @param to the same as before where only something was noted
 */
public record ClaimChange(long id, Instant at, String by, Optional<ClaimState> from, ClaimState to, String note) {}
