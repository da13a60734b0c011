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
import java.util.List;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.people.Role;
import org.roundsman.profiles.ProfileCases;
import org.roundsman.profiles.StoredWalk;
import org.roundsman.profiles.StoredWalks;
import org.roundsman.profiles.Workbench;
import org.roundsman.profiles.WrittenProfile;
import org.roundsman.snmp.Snapshot;
import org.roundsman.snmp.UnusedGroup;
import org.roundsman.snmp.WalkReading;
import org.roundsman.web.page.Visitor;

/** One stored walk: what profiles make of it, what they leave, and its test case. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class WalkPages {

    private final StoredWalks walks;
    private final Workbench bench;
    private final ProfileCases cases;
    private final Proposing proposing;
    private final Visitor visitor;

    WalkPages(StoredWalks walks, Workbench bench, ProfileCases cases, Proposing proposing, Visitor visitor) {
        this.walks = walks;
        this.bench = bench;
        this.cases = cases;
        this.proposing = proposing;
        this.visitor = visitor;
    }

    /** What to choose from when lines are proposed. */
    record ProposeView(
            StoredWalk walk,
            UnusedGroup group,
            List<Integer> indexParts,
            String indexes,
            List<String> keys,
            List<String> forms,
            List<WrittenProfile> profiles) {}

    @CheckedTemplate(basePath = "profiles")
    static class Templates {
        private Templates() {}

        static native TemplateInstance walk(WalkView view);

        static native TemplateInstance propose(ProposeView view);
    }

    @GET
    @Path("profiles/walks/{id}")
    public TemplateInstance walk(@RestPath long id) {
        StoredWalk walk = stored(id);
        WalkReading reading = bench.read(walk);
        ProfileCases.CaseOutcome outcome = walk.testCase() ? cases.now(walk, reading) : null;
        return Templates.walk(WalkView.of(walk, reading, outcome, proposing.writes()));
    }

    /** As net-snmp's tools print it. */
    @GET
    @Path("profiles/walks/{id}/text")
    @Produces(MediaType.TEXT_PLAIN + ";charset=utf-8")
    public String text(@RestPath long id) {
        return walks.snapshots(stored(id)).stream()
                .map(Snapshot::walk)
                .map(org.roundsman.snmp.Walk::text)
                .collect(Collectors.joining("\n"));
    }

    @POST
    @Path("profiles/walks/{id}/remove")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response remove(@RestPath long id) {
        walks.remove(stored(id));
        return Response.seeOther(URI.create("/profiles/workbench")).build();
    }

    /** Makes it a test case, or takes new results as expected. */
    @POST
    @Path("profiles/walks/{id}/expect")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response expect(@RestPath long id) {
        cases.keep(stored(id));
        return Response.seeOther(URI.create("/profiles/walks/" + id)).build();
    }

    @POST
    @Path("profiles/walks/{id}/expect-nothing")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public Response expectNothing(@RestPath long id) {
        cases.drop(stored(id));
        return Response.seeOther(URI.create("/profiles/walks/" + id)).build();
    }

    @GET
    @Path("profiles/walks/{id}/propose")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public TemplateInstance propose(@RestPath long id, @RestQuery @DefaultValue("") String group) {
        return Templates.propose(proposing.view(stored(id), group));
    }

    /** Opens the editor with the proposed lines in it. */
    @POST
    @Path("profiles/walks/{id}/propose")
    @RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
    public TemplateInstance proposed(@RestPath long id, @BeanParam ProposeForm form) {
        return EditorPages.Templates.editor(proposing.editor(stored(id), form));
    }

    private StoredWalk stored(long id) {
        return walks.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
