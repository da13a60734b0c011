package org.roundsman.web.device;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.web.page.Visitor;

/** What happened to one device: a part of its page that refreshes itself, or without scripts a page of its own. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class HappenedPages {

    private final HappenedViews views;
    private final Visitor visitor;

    HappenedPages(HappenedViews views, Visitor visitor) {
        this.views = views;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "device")
    static class Templates {
        private Templates() {}

        static native TemplateInstance happened(Happened happened);

        static native TemplateInstance happenings(Happened happened);
    }

    /** @param seen the stamp of what is shown; without news of it the answer is empty (204) */
    @GET
    @Path("devices/{id}/happened")
    public Response happened(
            @RestPath long id,
            @RestQuery @DefaultValue("") String kind,
            @RestQuery @DefaultValue("1") int page,
            @RestQuery @DefaultValue("") String seen,
            @HeaderParam("HX-Request") String part) {
        CustomerScope scope = visitor.scope();
        if (!seen.isEmpty() && !views.news(scope, id, seen).orElseThrow(NotFoundException::new)) {
            return Response.noContent().build();
        }
        Happened happened =
                views.view(scope, id, new HappenedViews.Wish(kind, page)).orElseThrow(NotFoundException::new);
        return Response.ok(part == null ? Templates.happenings(happened) : Templates.happened(happened))
                .build();
    }
}
