package org.roundsman.web.health;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.roundsman.people.Role;

/** How the service itself is doing. */
@Path("/own-health")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class HealthPages {

    private final OwnHealth health;

    HealthPages(OwnHealth health) {
        this.health = health;
    }

    @CheckedTemplate(basePath = "health")
    static class Templates {
        private Templates() {}

        static native TemplateInstance health(OwnHealth.Picture picture);

        static native TemplateInstance live(OwnHealth.Picture picture);
    }

    @GET
    public TemplateInstance health() {
        return Templates.health(health.now());
    }

    /** The part that refreshes itself. */
    @GET
    @Path("live")
    public TemplateInstance live() {
        return Templates.live(health.now());
    }
}
