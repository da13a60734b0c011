package org.roundsman.web.site;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.web.page.Visitor;

/** One site. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class SitePages {

    private final Sites sites;
    private final SiteViews views;
    private final Visitor visitor;
    private final Clock clock;

    SitePages(Sites sites, SiteViews views, Visitor visitor, Clock clock) {
        this.sites = sites;
        this.views = views;
        this.visitor = visitor;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "site")
    static class Templates {
        private Templates() {}

        static native TemplateInstance site(SiteFacts facts, SiteView view);

        static native TemplateInstance live(SiteView view);
    }

    @GET
    @Path("sites/{id}")
    public TemplateInstance site(@RestPath long id) {
        Site site = sites.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        SiteView view = views.view(visitor.scope(), id).orElseThrow(NotFoundException::new);
        return Templates.site(SiteFacts.of(site, clock.instant()), view);
    }

    /** The part that refreshes itself. */
    @GET
    @Path("sites/{id}/live")
    public TemplateInstance live(@RestPath long id) {
        return Templates.live(views.view(visitor.scope(), id).orElseThrow(NotFoundException::new));
    }
}
