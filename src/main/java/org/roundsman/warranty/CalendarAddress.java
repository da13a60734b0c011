package org.roundsman.warranty;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A private address of the calendar, without its secret.
 *
 * @param person sign-in name of whose it is
 * @param customerId the one customer it tells of; empty for every customer
 * @param customer name of that one, or empty
 * @param usedAt exact to about a minute; empty when it never was
 */
public record CalendarAddress(
        long id,
        long accountId,
        String person,
        String name,
        OptionalLong customerId,
        String customer,
        Instant createdAt,
        Optional<Instant> usedAt,
        Optional<Instant> revokedAt) {

    public boolean good() {
        return revokedAt.isEmpty();
    }
}
