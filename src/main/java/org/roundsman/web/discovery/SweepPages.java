package org.roundsman.web.discovery;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.discovery.Sweeps;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Looking for devices at a site: what to ask, and how far it is. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class SweepPages {

    private final Sites sites;
    private final Sweeps sweeps;
    private final SweepPage page;
    private final Visitor visitor;

    SweepPages(Sites sites, Sweeps sweeps, SweepPage page, Visitor visitor) {
        this.sites = sites;
        this.sweeps = sweeps;
        this.page = page;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "discovery")
    static class Templates {
        private Templates() {}

        static native TemplateInstance sweeps(SweepPage.Plan plan, SweepPage.Result result);

        static native TemplateInstance live(SweepPage.Result result);

        static native TemplateInstance count(CountView count);
    }

    @GET
    @Path("sites/{id}/sweeps")
    public TemplateInstance sweeps(@RestPath long id) {
        return whole(site(id), null, Faults.NONE);
    }

    /** The part that refreshes itself while a sweep runs. */
    @GET
    @Path("sites/{id}/sweeps/live")
    public TemplateInstance live(@RestPath long id) {
        return Templates.live(page.result(visitor.scope(), site(id), List.of(), Faults.NONE, ""));
    }

    /** How many addresses are entered, while they are entered. */
    @GET
    @Path("sites/{id}/sweeps/count")
    public TemplateInstance count(@RestPath long id, @RestQuery String ranges, @RestQuery String ports) {
        site(id);
        return Templates.count(CountView.of(ranges, ports));
    }

    @POST
    @Path("sites/{id}/sweeps")
    public Response save(@RestPath long id, @BeanParam PlanForm form) {
        Site site = site(id);
        PlanForm.Read read = form.read();
        if (!read.faults().isEmpty()) {
            return refused(site, form, new Faults(read.faults()));
        }
        try {
            sweeps.save(visitor.scope(), id, read.plan());
            if (form.starts()) {
                sweeps.start(visitor.scope(), id);
            }
            return back(id);
        } catch (InputRejected e) {
            return refused(site, form, new Faults(e.faults()));
        }
    }

    @POST
    @Path("sites/{id}/sweeps/cancel")
    public Response cancel(@RestPath long id) {
        sweeps.cancel(visitor.scope(), site(id).id);
        return back(id);
    }

    @POST
    @Path("sites/{id}/sweeps/resume")
    public Response resume(@RestPath long id) {
        sweeps.resume(visitor.scope(), site(id).id);
        return back(id);
    }

    private Response refused(Site site, PlanForm form, Faults faults) {
        return Response.status(422).entity(whole(site, form, faults)).build();
    }

    private TemplateInstance whole(Site site, PlanForm form, Faults faults) {
        return Templates.sweeps(
                page.plan(visitor.scope(), site, form, faults),
                page.result(visitor.scope(), site, List.of(), Faults.NONE, ""));
    }

    private static Response back(long id) {
        return Response.seeOther(URI.create("/sites/" + id + "/sweeps")).build();
    }

    private Site site(long id) {
        return sites.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
