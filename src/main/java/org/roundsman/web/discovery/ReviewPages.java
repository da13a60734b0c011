package org.roundsman.web.discovery;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.discovery.Adopted;
import org.roundsman.discovery.Adoption;
import org.roundsman.discovery.FoundDevice.Address;
import org.roundsman.discovery.Review;
import org.roundsman.discovery.Reviews;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Site;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** The list of what a sweep found: reviewed, adopted, set aside. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ReviewPages {

    private final SweepSite sites;
    private final Reviews reviews;
    private final Adoption adoption;
    private final SweepPage page;
    private final Visitor visitor;

    ReviewPages(SweepSite sites, Reviews reviews, Adoption adoption, SweepPage page, Visitor visitor) {
        this.sites = sites;
        this.reviews = reviews;
        this.adoption = adoption;
        this.page = page;
        this.visitor = visitor;
    }

    @POST
    @Path("sites/{id}/sweeps/review")
    public Response review(@RestPath long id, @BeanParam ReviewForm form) {
        Site site = site(id);
        CustomerScope scope = visitor.scope();
        List<Review> entries = form.entries();
        reviews.keep(scope, id, entries);
        if (form.aside() != null && !form.aside().isBlank()) {
            setAside(scope, id, form.aside());
            return back(id);
        }
        if (!"adopt".equals(form.act())) {
            return back(id);
        }
        try {
            return shown(site, List.of(), Faults.NONE, words(adoption.adopt(scope, id, entries)), 200);
        } catch (InputRejected e) {
            return shown(site, entries, new Faults(e.faults()), "", 422);
        }
    }

    private Response shown(Site site, List<Review> entries, Faults faults, String said, int status) {
        CustomerScope scope = visitor.scope();
        return Response.status(status)
                .entity(SweepPages.Templates.sweeps(
                        page.plan(scope, site, null, Faults.NONE), page.result(scope, site, entries, faults, said)))
                .build();
    }

    private static String words(Adopted adopted) {
        String what = Stream.of(
                        some(adopted.added(), "new device", "new devices"),
                        some(adopted.readdressed(), "changed address", "changed addresses"),
                        some(adopted.moved(), "device from another site", "devices from other sites"))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        return what.isEmpty()
                ? "Nothing was ticked, so nothing was adopted."
                : "Adopted: " + what + ". The rounds take them up at once.";
    }

    private static String some(int count, String one, String more) {
        return count == 0 ? "" : Words.many(count, one, more);
    }

    private void setAside(CustomerScope scope, long siteId, String findingId) {
        reviews.latest(scope, siteId).ifPresent(review -> review.found().stream()
                .filter(line -> String.valueOf(line.findingId()).equals(findingId))
                .flatMap(line -> line.at().stream())
                .forEach((Address a) -> sites.sweeps().setAside(scope, siteId, a.host(), a.port())));
    }

    @POST
    @Path("sites/{id}/sweeps/take-back")
    public Response takeBack(@RestPath long id, @RestForm String host, @RestForm int port) {
        site(id);
        sites.sweeps().takeBack(visitor.scope(), id, host == null ? "" : host, port);
        return back(id);
    }

    private static Response back(long id) {
        return Response.seeOther(URI.create("/sites/" + id + "/sweeps#found")).build();
    }

    private Site site(long id) {
        return sites.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
