package org.roundsman.web.reports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.dispatch.ReportLinks;

/**
 * A report at a private address. Nobody signs in for it. A link that ran out or was taken back is answered like one that never
 * was, and nothing of it may be kept on the way.
 */
@Path("/")
@PermitAll
class LinkFile {

    private final ReportLinks links;
    private final LinkBrake brake;
    private final RoutingContext context;

    LinkFile(ReportLinks links, LinkBrake brake, RoutingContext context) {
        this.links = links;
        this.brake = brake;
        this.context = context;
    }

    @CheckedTemplate(basePath = "reports")
    static class Templates {
        private Templates() {}

        static native TemplateInstance linkNot(String title, String text);
    }

    @GET
    @Path("report-link/{secret}")
    public Response open(@RestPath String secret) {
        long wait = brake.waits(context.request().remoteAddress().hostAddress());
        if (wait > 0) {
            return page(
                    Response.status(429).header(HttpHeaders.RETRY_AFTER, wait),
                    "Too often",
                    "Links were opened too often from your network. Try again in " + wait + " seconds.");
        }
        return links.open(secret)
                .map(opened -> Response.ok(opened.pdf())
                        .type("application/pdf")
                        .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + opened.fileName() + "\"")
                        .build())
                .orElseGet(() -> page(
                        Response.status(404),
                        "This link opens nothing",
                        "Links to reports work for some days only. Ask whoever gave it to you for another one."));
    }

    private static Response page(Response.ResponseBuilder answer, String title, String text) {
        return answer.type(MediaType.TEXT_HTML_TYPE.withCharset("utf-8"))
                .entity(Templates.linkNot(title, text).render())
                .build();
    }
}
