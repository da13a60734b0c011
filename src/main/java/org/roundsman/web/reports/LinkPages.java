package org.roundsman.web.reports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.dispatch.DeskRejected;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportLinks;
import org.roundsman.dispatch.ReportMails;
import org.roundsman.dispatch.ReportsConfig;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;

/** Links that open a report without a sign-in, and mails of it that came back. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class LinkPages {

    private final ReportLinks links;
    private final ReportMails mails;
    private final ReportViews views;
    private final ReportsConfig config;

    LinkPages(ReportLinks links, ReportMails mails, ReportViews views, ReportsConfig config) {
        this.links = links;
        this.mails = mails;
        this.views = views;
        this.config = config;
    }

    /**
     * A link that was made just now.
     *
     * @param report what it opens, in words
     */
    record Made(long id, String report, String address) {}

    @CheckedTemplate(basePath = "reports")
    static class Templates {
        private Templates() {}

        static native TemplateInstance linkMade(Made made);
    }

    /** Shows the new link once: it is in this answer and nowhere else. */
    @POST
    @Path("reports/{id}/links")
    public Response make(@RestPath long id, @BeanParam ReviewForm form, @Context UriInfo here) {
        KeptReport report = views.find(id);
        try {
            ReportLinks.Fresh fresh = links.make(id, Asked.small(form.days()));
            String base = config.linkAddress().orElseGet(() -> here.getBaseUri().toString());
            String address = base.replaceFirst("/+$", "") + "/report-link/" + fresh.secret();
            Made made = new Made(id, report.customer() + ", " + Periods.of(report), address);
            return Response.ok(Templates.linkMade(made)).build();
        } catch (InputRejected e) {
            return refused(id, form, new Faults(e.faults()));
        } catch (DeskRejected e) {
            return refused(id, form, Faults.of("days", e.getMessage()));
        }
    }

    @POST
    @Path("reports/{id}/links/{link}/revoke")
    public Response revoke(@RestPath long id, @RestPath long link) {
        views.find(id);
        if (links.of(id).stream().noneMatch(one -> one.id() == link)) {
            throw new NotFoundException();
        }
        links.revoke(link);
        return back(id, "links");
    }

    /** Notes that a mail came back, with what its answer says. */
    @POST
    @Path("reports/{id}/mails/{mail}/bounced")
    public Response bounced(@RestPath long id, @RestPath long mail, @BeanParam ReviewForm form) {
        views.find(id);
        if (mails.of(id).stream().noneMatch(one -> one.id() == mail)) {
            throw new NotFoundException();
        }
        try {
            mails.bounced(mail, Asked.text(form.why()));
            return back(id, "mails");
        } catch (InputRejected e) {
            return refused(id, form, new Faults(e.faults()));
        } catch (DeskRejected e) {
            return refused(id, form, Faults.of("", e.getMessage()));
        }
    }

    private Response refused(long id, ReviewForm form, Faults faults) {
        return Response.status(422)
                .entity(ReportPages.Templates.report(views.of(id, form, faults)))
                .build();
    }

    private static Response back(long id, String part) {
        return Response.seeOther(URI.create("/reports/" + id + "#" + part)).build();
    }
}
