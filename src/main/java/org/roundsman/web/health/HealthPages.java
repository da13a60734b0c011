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
    private final NoticeHealth notices;
    private final TellingHealth telling;

    HealthPages(OwnHealth health, NoticeHealth notices, TellingHealth telling) {
        this.health = health;
        this.notices = notices;
        this.telling = telling;
    }

    @CheckedTemplate(basePath = "health")
    static class Templates {
        private Templates() {}

        static native TemplateInstance health(
                OwnHealth.Picture picture, NoticeHealth.Notices notices, OwnHealth.Group telling);

        static native TemplateInstance live(
                OwnHealth.Picture picture, NoticeHealth.Notices notices, OwnHealth.Group telling);
    }

    @GET
    public TemplateInstance health() {
        return Templates.health(health.now(), notices.now(), telling.now());
    }

    /** The part that refreshes itself. */
    @GET
    @Path("live")
    public TemplateInstance live() {
        return Templates.live(health.now(), notices.now(), telling.now());
    }
}
