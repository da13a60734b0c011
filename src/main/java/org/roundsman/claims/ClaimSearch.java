package org.roundsman.claims;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * Which claims to look for. Empty leaves a matter open.
 *
 * @param unfinished only those that are not closed
 * @param number page, from 1; beyond the end the last page comes
 * @param size at most so many on a page, from 1 to 500
 */
public record ClaimSearch(
        Optional<ClaimState> state, boolean unfinished, OptionalLong customerId, int number, int size) {

    public ClaimSearch {
        if (number < 1 || size < 1 || size > 500) {
            throw new IllegalArgumentException("page " + number + " of size " + size);
        }
    }
}
