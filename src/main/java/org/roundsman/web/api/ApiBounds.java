package org.roundsman.web.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.roundsman.people.ApiAddress;
import org.roundsman.web.page.BodyLimits;

/** Looks at requests of the API before anything reads their bodies, and at what goes out with the answers. */
final class ApiBounds {

    /** After the headers of safety, before the limit of the server, which answers without words. */
    private static final int EARLY = 450;

    private final ObjectMapper json;
    private final String formCookie;

    ApiBounds(ObjectMapper json, @ConfigProperty(name = "quarkus.rest-csrf.cookie-name") String formCookie) {
        this.json = json;
        this.formCookie = formCookie;
    }

    void register(@Observes Filters filters) {
        filters.register(this::look, EARLY);
    }

    private void look(RoutingContext context) {
        if (!ApiAddress.is(context)) {
            context.next();
            return;
        }
        // Forms have cookies for their anti-forgery tokens; the API has neither.
        context.addHeadersEndHandler(nothing -> context.response().removeCookie(formCookie, false));
        long limit = BodyLimits.limit(context);
        if (length(context) > limit) {
            refuse(context, limit);
        } else {
            context.next();
        }
    }

    /** As the request says; a body that comes in chunks is counted by the server while it is read. */
    private static long length(RoutingContext context) {
        try {
            String length = context.request().getHeader("Content-Length");
            return length == null ? 0 : Long.parseLong(length);
        } catch (NumberFormatException e) {
            return Long.MAX_VALUE;
        }
    }

    private void refuse(RoutingContext context, long limit) {
        Problem problem = Problem.of(ProblemKind.TOO_LARGE, "At most " + limit + " octets are taken in one request.");
        try {
            context.request().resume(); // what still comes is dropped, so that the client gets to read the answer
            context.response()
                    .setStatusCode(problem.status())
                    .putHeader("Content-Type", Problem.MEDIA_TYPE)
                    .end(json.writeValueAsString(problem));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e); // a record of plain values
        }
    }
}
