package org.roundsman.web.firmware;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.firmware.FirmwarePolicies;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;

/** Changes what is decided about a line of firmware: the owner's alone. */
@Path("/firmware/policy/{line}")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Role.OWNER_ROLE)
class PolicyEdits {

    private final FirmwarePolicies policies;
    private final PolicyViews views;

    PolicyEdits(FirmwarePolicies policies, PolicyViews views) {
        this.policies = policies;
        this.views = views;
    }

    @POST
    @Path("releases")
    public Response release(@RestPath long line, @BeanParam ReleaseForm form) {
        return saved(line, form, "release", () -> policies.save(line, form.release()));
    }

    @POST
    @Path("releases/{release}/remove")
    public Response removeRelease(@RestPath long line, @RestPath long release) {
        return saved(line, null, "", () -> policies.removeRelease(line, release));
    }

    @POST
    @Path("minimums")
    public Response minimum(@RestPath long line, @BeanParam ReleaseForm form) {
        return saved(line, form, "minimum", () -> policies.save(line, form.minimum()));
    }

    @POST
    @Path("minimums/{minimum}/remove")
    public Response removeMinimum(@RestPath long line, @RestPath long minimum) {
        return saved(line, null, "", () -> policies.removeMinimum(line, minimum));
    }

    @POST
    @Path("pilots")
    public Response pilot(@RestPath long line, @BeanParam ReleaseForm form) {
        return saved(line, form, "pilot", () -> policies.addPilot(line, form.siteId()));
    }

    @POST
    @Path("pilots/{pilot}/remove")
    public Response removePilot(@RestPath long line, @RestPath long pilot) {
        return saved(line, null, "", () -> policies.removePilot(line, pilot));
    }

    @POST
    @Path("exceptions")
    public Response exception(@RestPath long line, @BeanParam ReleaseForm form) {
        return saved(line, form, "exception", () -> policies.except(line, form.exception()));
    }

    @POST
    @Path("exceptions/{exception}/remove")
    public Response removeException(@RestPath long line, @RestPath long exception) {
        return saved(line, null, "", () -> policies.removeException(line, exception));
    }

    private Response saved(long line, ReleaseForm form, String which, Runnable save) {
        try {
            save.run();
            return Response.seeOther(URI.create("/firmware/policy/" + line)).build();
        } catch (InputRejected e) {
            if (form == null || e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
            LinePolicy policy = policies.find(line).orElseThrow(NotFoundException::new);
            return Response.status(422)
                    .entity(PolicyPages.Templates.line(views.whole(policy, "", form, new Faults(e.faults()), which)))
                    .build();
        }
    }
}
