package org.roundsman.web.firmware;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.people.Role;

/** What runs where, what has to be done about it, and how changes went. */
@Path("/firmware")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class FirmwarePages {

    private final FirmwareViews views;

    FirmwarePages(FirmwareViews views) {
        this.views = views;
    }

    @CheckedTemplate(basePath = "firmware")
    static class Templates {
        private Templates() {}

        static native TemplateInstance overview(FirmwareViews.Runs view);

        static native TemplateInstance devices(FirmwareViews.Listed view);

        static native TemplateInstance work(FirmwareViews.Work view);

        static native TemplateInstance upgrades(FirmwareViews.Upgrades view);
    }

    @GET
    public TemplateInstance overview(@BeanParam FirmwareSearch search) {
        return Templates.overview(views.runs(search));
    }

    @GET
    @Path("devices")
    public TemplateInstance devices(@BeanParam FirmwareSearch search) {
        return Templates.devices(views.devices(search));
    }

    @GET
    @Path("work")
    public TemplateInstance work(@RestQuery String page) {
        return Templates.work(views.work(page));
    }

    /** With {@code device} of that one only. */
    @GET
    @Path("upgrades")
    public TemplateInstance upgrades(@RestQuery String device, @RestQuery String page) {
        return Templates.upgrades(views.upgrades(device, page));
    }
}
