package org.roundsman.web.page;

import io.quarkus.arc.Arc;
import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.ContextNotActiveException;
import java.util.Optional;
import org.roundsman.audit.Actor;
import org.roundsman.audit.ActorSource;
import org.roundsman.people.SignedIn;
import org.roundsman.people.UsedToken;

/** Names the person behind a request, and the personal token where it came with one, for the audit. */
@ApplicationScoped
class VisitorActor implements ActorSource {

    private final SecurityIdentity identity;
    private final RoutingContext request;

    VisitorActor(SecurityIdentity identity, RoutingContext request) {
        this.identity = identity;
        this.request = request;
    }

    @Override
    public Optional<Actor> current() {
        if (!Arc.container().requestContext().isActive()) {
            return Optional.empty();
        }
        return SignedIn.of(identity).map(person -> actor(person, UsedToken.of(identity)));
    }

    private Actor actor(SignedIn person, Optional<UsedToken> token) {
        Actor.Via via = token.isPresent() ? Actor.Via.API : Actor.Via.PAGE;
        String name = token.map(UsedToken::name).orElse("");
        return new Actor(person.name(), person.accountId(), via, name, address());
    }

    /** Empty where the person did not come by a request. */
    private String address() {
        try {
            return request.request().remoteAddress().hostAddress();
        } catch (ContextNotActiveException e) {
            return "";
        }
    }
}
