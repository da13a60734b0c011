package org.roundsman.web.topology;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.annotation.security.RolesAllowed;
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
import org.roundsman.people.Role;
import org.roundsman.topology.WiringReads;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** What hangs on what at one site. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class WiringPages {

    private final WiringViews views;
    private final WiringReads reads;
    private final Visitor visitor;

    WiringPages(WiringViews views, WiringReads reads, Visitor visitor) {
        this.views = views;
        this.reads = reads;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "topology")
    static class Templates {
        private Templates() {}

        static native TemplateInstance wiring(WiringView view, String told);

        static native TemplateInstance live(WiringView view);
    }

    @GET
    @Path("sites/{id}/wiring")
    public TemplateInstance wiring(@RestPath long id, @RestQuery String asked, @RestQuery String silent) {
        return Templates.wiring(view(id), told(asked, silent));
    }

    /** The part that refreshes itself. */
    @GET
    @Path("sites/{id}/wiring/live")
    public TemplateInstance live(@RestPath long id) {
        return Templates.live(view(id));
    }

    /** Reads all devices of the site as soon as may be. */
    @POST
    @Path("sites/{id}/wiring/read")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response read(@RestPath long id) {
        view(id);
        WiringReads.Wish wish = reads.readNow(id);
        return Response.seeOther(
                        URI.create("/sites/" + id + "/wiring?asked=" + wish.asked() + "&silent=" + wish.silent()))
                .build();
    }

    private static String told(String asked, String silent) {
        int devices = number(asked);
        int left = number(silent);
        if (devices + left == 0) {
            return asked == null ? "" : "No device of this site is watched, so none can be read.";
        }
        String reading = devices == 0
                ? "No device is being read now."
                : Words.many(devices, "device is", "devices are") + " being read"
                        + (devices == 1 ? "" : ", one after the other") + "; this page refreshes itself.";
        return left == 0 ? reading : reading + " " + silent(left);
    }

    private static String silent(int devices) {
        return devices == 1
                ? "1 device is silent or not reached yet, and keeps what was known of it."
                : Words.count(devices) + " devices are silent or not reached yet, and keep what was known of them.";
    }

    private static int number(String text) {
        return text != null && text.matches("[0-9]{1,5}") ? Integer.parseInt(text) : 0;
    }

    private WiringView view(long id) {
        return views.site(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
