package org.roundsman.web.firmware;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.firmware.FirmwarePolicies;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;

/** What is decided about firmware. */
@Path("/firmware/policy")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class PolicyPages {

    private final FirmwarePolicies policies;
    private final PolicyViews views;

    PolicyPages(FirmwarePolicies policies, PolicyViews views) {
        this.policies = policies;
        this.views = views;
    }

    @CheckedTemplate(basePath = "firmware")
    static class Templates {
        private Templates() {}

        static native TemplateInstance lines(List<PolicyViews.LineOf> lines);

        static native TemplateInstance line(PolicyViews.Whole view);
    }

    @GET
    public TemplateInstance lines() {
        return Templates.lines(views.lines(policies.all()));
    }

    /**
     * With {@code version}, that one is tried; with {@code change}, the form holds that release.
     */
    @GET
    @Path("{line}")
    public TemplateInstance line(
            @RestPath long line,
            @RestQuery @DefaultValue("") String version,
            @RestQuery @DefaultValue("0") String change) {
        LinePolicy policy = policies.find(line).orElseThrow(NotFoundException::new);
        return Templates.line(views.whole(policy, version, ReleaseForm.of(policy, change), Faults.NONE, ""));
    }
}
