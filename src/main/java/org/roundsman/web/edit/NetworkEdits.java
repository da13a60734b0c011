package org.roundsman.web.edit;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Network;
import org.roundsman.fleet.Networks;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Role;
import org.roundsman.web.page.Visitor;

/** What the networks of a site are for. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class NetworkEdits {

    private static final List<String> PURPOSES = List.of("staff", "guest", "other");

    private final Sites sites;
    private final Networks networks;
    private final Visitor visitor;

    NetworkEdits(Sites sites, Networks networks, Visitor visitor) {
        this.sites = sites;
        this.networks = networks;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "edit")
    static class Templates {
        private Templates() {}

        static native TemplateInstance networks(Site site, List<Network> networks, List<String> purposes);
    }

    @GET
    @Path("sites/{id}/networks")
    public TemplateInstance all(@RestPath long id) {
        return Templates.networks(site(id), networks.ofSite(id), PURPOSES);
    }

    /** Takes networks that devices carry; none is added here. */
    @POST
    @Path("sites/{id}/networks")
    public Response purpose(
            @RestPath long id, @RestForm @DefaultValue("") String ssid, @RestForm @DefaultValue("") String purpose) {
        site(id);
        if (networks.ofSite(id).stream().noneMatch(network -> network.ssid.equals(ssid))) {
            throw new NotFoundException();
        }
        try {
            networks.setPurpose(id, ssid, purpose);
            return Response.seeOther(URI.create("/sites/" + id + "/networks")).build();
        } catch (InputRejected e) {
            throw new NotFoundException(e);
        }
    }

    private Site site(long id) {
        return sites.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
