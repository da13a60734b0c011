package org.roundsman.web.api;

import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Optional;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
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

    /** Before the filter of anti-forgery tokens, which would refuse forms without words. */
    @ServerRequestFilter(priority = Priorities.AUTHENTICATION)
    public Optional<Response> scope(ResourceInfo asked, ContainerRequestContext request) {
        return ApiAddress.is(context) ? check(asked).or(() -> form(request)) : Optional.empty();
    }

    private static Optional<Response> form(ContainerRequestContext request) {
        MediaType type = request.getMediaType();
        boolean form = type != null
                && (type.isCompatible(MediaType.APPLICATION_FORM_URLENCODED_TYPE)
                        || type.isCompatible(MediaType.MULTIPART_FORM_DATA_TYPE));
        return form
                ? Optional.of(Problem.of(ProblemKind.WRONG_TYPE, "The API takes no forms.")
                        .response())
                : Optional.empty();
    }

    /** Whoever refuses without words, the answer has some. */
    @ServerResponseFilter
    public void words(ContainerResponseContext response) {
        if (response.getStatus() >= 400 && !response.hasEntity() && ApiAddress.is(context)) {
            ProblemKind kind = ProblemKind.of(response.getStatus());
            Problem problem = new Problem(kind.type(), kind.title(), response.getStatus(), kind.meaning(), List.of());
            response.setEntity(problem, null, MediaType.valueOf(Problem.MEDIA_TYPE));
        }
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
