package org.roundsman.web.page;

import io.quarkus.security.UnauthorizedException;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.RequestScoped;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.people.SignedIn;

/** Who asks for the page, and whose data that person may see. */
@RequestScoped
public class Visitor {

    private final SecurityIdentity identity;

    Visitor(SecurityIdentity identity) {
        this.identity = identity;
    }

    /**
     * The person.
     *
     * @throws UnauthorizedException when nobody is signed in
     */
    public SignedIn person() {
        return SignedIn.of(identity).orElseThrow(UnauthorizedException::new);
    }

    public CustomerScope scope() {
        return person().scope();
    }

    boolean signedIn() {
        return SignedIn.of(identity).isPresent();
    }
}
