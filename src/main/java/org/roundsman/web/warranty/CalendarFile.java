package org.roundsman.web.warranty;

import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.warranty.CalendarBrake;
import org.roundsman.warranty.CalendarFeed;

/**
 * The calendar at a private address. Nobody signs in for it: calendars cannot. What is not good is answered like what never
 * was, and nothing of it may be kept on the way.
 */
@Path("/")
@PermitAll
class CalendarFile {

    private static final String CALENDAR = "text/calendar";

    private final CalendarFeed feed;
    private final CalendarBrake brake;
    private final RoutingContext context;

    CalendarFile(CalendarFeed feed, CalendarBrake brake, RoutingContext context) {
        this.feed = feed;
        this.brake = brake;
        this.context = context;
    }

    @GET
    @Path("calendar/{secret}.ics")
    @Produces(CALENDAR)
    public Response read(@RestPath String secret) {
        long wait = brake.waits(context.request().remoteAddress().hostAddress(), secret);
        if (wait > 0) {
            return Response.status(429)
                    .header("Retry-After", wait)
                    .type("text/plain;charset=utf-8")
                    .entity("This calendar was read too often. Try again in " + wait + " seconds.")
                    .build();
        }
        return feed.read(secret)
                .map(content -> Response.ok(content)
                        .type(CALENDAR + ";charset=utf-8")
                        .header("Content-Disposition", "attachment; filename=\"warranty.ics\"")
                        .build())
                .orElseGet(() -> Response.status(404)
                        .type("text/plain;charset=utf-8")
                        .entity("There is no such calendar.")
                        .build());
    }
}
