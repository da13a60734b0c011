package org.roundsman.people;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;

/** Turns a token into the person who holds it. */
@ApplicationScoped
class SessionIdentity implements IdentityProvider<SessionRequest> {

    private final SignIns signIns;

    SessionIdentity(SignIns signIns) {
        this.signIns = signIns;
    }

    @Override
    public Class<SessionRequest> getRequestType() {
        return SessionRequest.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(SessionRequest request, AuthenticationRequestContext context) {
        return context.runBlocking(() -> signIns.holder(request.token())
                .map(SessionIdentity::identity)
                .orElseThrow(AuthenticationFailedException::new));
    }

    private static SecurityIdentity identity(SignedIn person) {
        return QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(person.name()))
                .addRole(person.role().name())
                .addAttribute(SignedIn.attribute(), person)
                .build();
    }
}
