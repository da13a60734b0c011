package org.roundsman.web.page;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.roundsman.people.ApiAddress;

/** Looks at every request before its page does. */
final class RequestGuard {

    private static final Set<String> HARMLESS = Set.of("GET", "HEAD", "OPTIONS");
    private static final Set<String> WITHOUT_PASSWORD_CHANGE = Set.of("password", "sign-out", "sign-in");

    private final Visitor visitor;
    private final RoutingContext context;

    RequestGuard(Visitor visitor, RoutingContext context) {
        this.visitor = visitor;
        this.context = context;
    }

    /** Only forms carry an anti-forgery token. What is sent to a page and is none came from no page of ours. */
    @ServerRequestFilter
    public Response noForm(ContainerRequestContext request) {
        boolean form = request.getMediaType() != null
                && (request.getMediaType().isCompatible(MediaType.APPLICATION_FORM_URLENCODED_TYPE)
                        || request.getMediaType().isCompatible(MediaType.MULTIPART_FORM_DATA_TYPE));
        return !form && !HARMLESS.contains(request.getMethod()) && !ApiAddress.is(context)
                ? Response.status(Response.Status.BAD_REQUEST).build()
                : null;
    }

    /** A second wall behind the anti-forgery token: browsers say where a request comes from. */
    @ServerRequestFilter
    public Response foreign(ContainerRequestContext request) {
        String from = request.getHeaderString("Sec-Fetch-Site");
        boolean foreign = from != null && !from.equals("same-origin") && !from.equals("none");
        return foreign && !HARMLESS.contains(request.getMethod()) && !ApiAddress.is(context)
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
        return !free
                        && !ApiAddress.is(context)
                        && visitor.signedIn()
                        && visitor.person().mustChange()
                ? Response.seeOther(URI.create("/password")).build()
                : null;
    }

    /** Without its anti-forgery token a form is refused with nothing to read. */
    @ServerResponseFilter
    public void words(ContainerRequestContext request, ContainerResponseContext response) {
        boolean unread = response.getStatus() == 400 && !response.hasEntity() && !ApiAddress.is(context);
        if (unread && !HARMLESS.contains(request.getMethod())) {
            response.setEntity(
                    "This form was open for too long, or it came from elsewhere. Go back, load the page again, and send it"
                            + " once more.",
                    null,
                    MediaType.TEXT_PLAIN_TYPE);
        }
    }
}
