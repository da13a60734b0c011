package org.roundsman.web.api;

import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Response;
import java.util.Optional;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.roundsman.people.ApiAddress;
import org.roundsman.people.UsedToken;

/** Lets a request of the API through when its token has the scope that the resource needs, and no other request. */
final class ApiGate {

    private final SecurityIdentity identity;
    private final RoutingContext context;

    ApiGate(SecurityIdentity identity, RoutingContext context) {
        this.identity = identity;
        this.context = context;
    }

    @ServerRequestFilter
    public Optional<Response> scope(ResourceInfo asked) {
        return ApiAddress.is(context) ? check(asked) : Optional.empty();
    }

    private Optional<Response> check(ResourceInfo asked) {
        Optional<UsedToken> token = UsedToken.of(identity);
        if (token.isEmpty()) {
            return Optional.of(Problem.of(ProblemKind.NO_TOKEN, ProblemKind.NO_TOKEN.meaning())
                    .response());
        }
        Optional<Needs> needs = needs(asked);
        if (needs.isPresent() && token.get().scopes().contains(needs.get().value())) {
            return Optional.empty();
        }
        String wanted = needs.map(n -> "The token lacks the scope “" + n.value().word() + "”.")
                .orElse("No token opens this.");
        return Optional.of(Problem.of(ProblemKind.NO_RIGHT, wanted).response());
    }

    private static Optional<Needs> needs(ResourceInfo asked) {
        Needs own = asked.getResourceMethod().getAnnotation(Needs.class);
        return Optional.ofNullable(own == null ? asked.getResourceClass().getAnnotation(Needs.class) : own);
    }
}
