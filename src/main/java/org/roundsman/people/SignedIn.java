package org.roundsman.people;

import io.quarkus.security.identity.SecurityIdentity;
import java.util.Optional;
import org.roundsman.fleet.CustomerScope;

/**
 * The person behind a request.
 *
 * @param name sign-in name
 * @param shownName what pages call the person, never empty
 * @param customerId the one customer of a viewer or of a narrowed token, empty for everybody else
 * @param mustChange the password is to be changed before anything else
 */
public record SignedIn(
        long accountId, String name, String shownName, Role role, Optional<Long> customerId, boolean mustChange) {

    private static final String ATTRIBUTE = "roundsman.signed-in";

    /** Whose data this person may see. */
    public CustomerScope scope() {
        return customerId.map(CustomerScope::of).orElseGet(CustomerScope::everyone);
    }

    /** The same person, who sees that one customer only. */
    SignedIn narrowedTo(long customer) {
        return new SignedIn(accountId, name, shownName, role, Optional.of(customer), mustChange);
    }

    /** The person of that identity; empty when nobody is signed in. */
    public static Optional<SignedIn> of(SecurityIdentity identity) {
        return Optional.ofNullable(identity.getAttribute(ATTRIBUTE));
    }

    static String attribute() {
        return ATTRIBUTE;
    }

    static SignedIn of(Account account) {
        return new SignedIn(
                account.id,
                account.name,
                account.shownName.isBlank() ? account.name : account.shownName,
                account.role,
                Optional.ofNullable(account.customerId),
                account.mustChange);
    }
}
