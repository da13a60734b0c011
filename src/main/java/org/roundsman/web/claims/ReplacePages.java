package org.roundsman.web.claims;

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
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.claims.Replacements;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Another unit in the place of a device, and what to do when the device says something else. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ReplacePages {

    private final Replacements replacements;
    private final ReplaceViews views;
    private final AskAgain again;
    private final Visitor visitor;

    ReplacePages(Replacements replacements, ReplaceViews views, AskAgain again, Visitor visitor) {
        this.replacements = replacements;
        this.views = views;
        this.again = again;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "claims")
    static class Templates {
        private Templates() {}

        static native TemplateInstance replace(ReplaceViews.Shown shown, Faults faults);
    }

    /** With {@code claim}, from that claim. */
    @GET
    @Path("devices/{id}/replace")
    public TemplateInstance form(@RestPath long id, @RestQuery String claim) {
        return Templates.replace(views.blank(visitor.scope(), id, Entry.text(claim)), Faults.NONE);
    }

    @POST
    @Path("devices/{id}/replace")
    public Response replace(@RestPath long id, @BeanParam ReplaceForm form) {
        try {
            replacements.announce(visitor.scope(), form.draft(id, views.zone(visitor.scope(), id)));
        } catch (InputRejected e) {
            requireThere(e);
            return Response.status(status(e))
                    .entity(Templates.replace(views.again(visitor.scope(), id, form), new Faults(e.faults())))
                    .build();
        }
        again.ask(id);
        return device(id);
    }

    /** The announced unit did not come. */
    @POST
    @Path("devices/{id}/replacement/withdraw")
    public Response withdraw(@RestPath long id) {
        return decide(id, () -> replacements.withdraw(visitor.scope(), id));
    }

    /** What the device says is true. */
    @POST
    @Path("devices/{id}/replacement/accept")
    public Response accept(@RestPath long id) {
        return decide(id, () -> replacements.accept(visitor.scope(), id));
    }

    private Response decide(long id, Runnable work) {
        try {
            work.run();
        } catch (InputRejected e) {
            requireThere(e);
            return Response.status(status(e))
                    .entity(Templates.replace(views.blank(visitor.scope(), id, ""), new Faults(e.faults())))
                    .build();
        }
        return device(id);
    }

    private static Response device(long id) {
        return Response.seeOther(URI.create("/devices/" + id)).build();
    }

    /** Fields are to be mended, or something else stands against it: most likely somebody else was first. */
    private static int status(InputRejected e) {
        return e.faults().containsKey("") ? 409 : 422;
    }

    private static void requireThere(InputRejected e) {
        if (e.faults().containsKey("id")) {
            throw new NotFoundException(e);
        }
    }
}
