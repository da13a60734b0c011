package org.roundsman.web.api;

import io.quarkus.security.UnauthorizedException;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.RequestScoped;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.people.SignedIn;
import org.roundsman.people.UsedToken;

/** Whose program asks, and whose data it may see. */
@RequestScoped
class Caller {

    private final SecurityIdentity identity;

    Caller(SecurityIdentity identity) {
        this.identity = identity;
    }

    SignedIn person() {
        return SignedIn.of(identity).orElseThrow(UnauthorizedException::new);
    }

    UsedToken token() {
        return UsedToken.of(identity).orElseThrow(UnauthorizedException::new);
    }

    CustomerScope scope() {
        return person().scope();
    }

    /**
     * For what is no single customer's.
     *
     * @throws ProblemException when the token is narrowed to one customer
     */
    void requireEveryone() {
        if (scope().onlyCustomer() != null) {
            throw new ProblemException(
                    ProblemKind.NO_RIGHT, "This is no single customer's, and the token is narrowed to one customer.");
        }
    }
}
