package org.roundsman.people;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/**
 * A personal token as lists show it: never the token itself.
 *
 * @param person sign-in name of its person
 * @param customerId the one customer it is narrowed to
 * @param usedAt its last use, exact to about a minute
 * @param usedFrom address of that use, or empty
 */
public record HeldToken(
        long id,
        long accountId,
        String person,
        String name,
        Set<TokenScope> scopes,
        Optional<Long> customerId,
        Instant createdAt,
        Instant expiresAt,
        Optional<Instant> revokedAt,
        Optional<Instant> usedAt,
        String usedFrom) {

    /** Whether it still opens anything. */
    public boolean good(Instant now) {
        return revokedAt.isEmpty() && now.isBefore(expiresAt);
    }
}
