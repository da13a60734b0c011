package org.roundsman.people;

import io.quarkus.security.identity.SecurityIdentity;
import java.util.Optional;
import java.util.Set;

/**
 * The personal token that a request came with.
 *
 * @param customerId the one customer it is narrowed to
 */
public record UsedToken(long id, String name, Set<TokenScope> scopes, Optional<Long> customerId) {

    private static final String ATTRIBUTE = "roundsman.token";

    public UsedToken {
        scopes = Set.copyOf(scopes);
    }

    /** The token of that identity; empty when it came by another way. */
    public static Optional<UsedToken> of(SecurityIdentity identity) {
        return Optional.ofNullable(identity.getAttribute(ATTRIBUTE));
    }

    static String attribute() {
        return ATTRIBUTE;
    }
}
