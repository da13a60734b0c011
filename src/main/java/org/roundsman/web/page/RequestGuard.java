package org.roundsman.web.page;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/** Looks at every request before its page does. */
final class RequestGuard {

    private static final Set<String> HARMLESS = Set.of("GET", "HEAD", "OPTIONS");
    private static final Set<String> WITHOUT_PASSWORD_CHANGE = Set.of("password", "sign-out", "sign-in");

    private final Visitor visitor;

    RequestGuard(Visitor visitor) {
        this.visitor = visitor;
    }

    /** A second wall behind the anti-forgery token: browsers say where a request comes from. */
    @ServerRequestFilter
    public Response foreign(ContainerRequestContext request) {
        String from = request.getHeaderString("Sec-Fetch-Site");
        boolean foreign = from != null && !from.equals("same-origin") && !from.equals("none");
        return foreign && !HARMLESS.contains(request.getMethod())
                ? Response.status(Response.Status.FORBIDDEN)
                        .entity("This request came from another site and was refused.")
                        .type("text/plain")
                        .build()
                : null;
    }

    /** A first password opens the page that changes it, and nothing else. */
    @ServerRequestFilter
    public Response firstPassword(ContainerRequestContext request) {
        String path = request.getUriInfo().getPath().replaceAll("^/+|/+$", "");
        boolean free = WITHOUT_PASSWORD_CHANGE.contains(path);
        return !free && visitor.signedIn() && visitor.person().mustChange()
                ? Response.seeOther(URI.create("/password")).build()
                : null;
    }
}
