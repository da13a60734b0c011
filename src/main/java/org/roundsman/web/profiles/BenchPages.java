package org.roundsman.web.profiles;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.profiles.WalkFetches;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** The workbench: getting a walk, from a device or as text. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class BenchPages {

    private final Benching benching;
    private final WalkFetches fetches;
    private final Devices devices;
    private final Visitor visitor;

    BenchPages(Benching benching, WalkFetches fetches, Devices devices, Visitor visitor) {
        this.benching = benching;
        this.fetches = fetches;
        this.devices = devices;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "profiles")
    static class Templates {
        private Templates() {}

        static native TemplateInstance bench(BenchView view);

        static native TemplateInstance readings(BenchView view, boolean live);
    }

    @GET
    @Path("profiles/workbench")
    public TemplateInstance bench(@RestQuery @DefaultValue("") String search) {
        return Templates.bench(benching.view(search, Faults.NONE));
    }

    /** The part that refreshes itself while devices are being read. */
    @GET
    @Path("profiles/workbench/readings")
    public TemplateInstance readings() {
        return Templates.readings(benching.view("", Faults.NONE), true);
    }

    /** Begins to read everything that a device has. */
    @POST
    @Path("profiles/devices/{id}/read")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response read(@RestPath long id, @RestForm String blank, @RestForm String laterOf) {
        Device device = devices.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        Optional<Long> later =
                laterOf != null && laterOf.matches("\\d{1,15}") ? Optional.of(Long.valueOf(laterOf)) : Optional.empty();
        try {
            fetches.start(new WalkFetches.Wish(id, device.name, device.site.customer.id, "yes".equals(blank), later));
            return Response.seeOther(URI.create("/profiles/workbench#readings")).build();
        } catch (InputRejected e) {
            return Response.status(422)
                    .entity(Templates.bench(benching.view("", new Faults(e.faults()))))
                    .build();
        }
    }

    @POST
    @Path("profiles/readings/{id}/stop")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response stop(@RestPath long id) {
        fetches.find(id).orElseThrow(NotFoundException::new);
        fetches.stop(id);
        return Response.seeOther(URI.create("/profiles/workbench#readings")).build();
    }

    /** Takes a pasted or uploaded walk. */
    @POST
    @Path("profiles/walks")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response add(@BeanParam WalkForm form) {
        try {
            return Response.seeOther(URI.create("/profiles/walks/" + benching.add(form)))
                    .build();
        } catch (InputRejected e) {
            return Response.status(422)
                    .entity(Templates.bench(benching.refused(form, new Faults(e.faults()))))
                    .build();
        }
    }
}
