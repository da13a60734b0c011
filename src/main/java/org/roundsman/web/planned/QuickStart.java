package org.roundsman.web.planned;

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
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.planned.PlanDraft.Where;
import org.roundsman.planned.Planning;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Target;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Planned work that starts now, in two taps: the length on the page of the site or device, and a yes here. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class QuickStart {

    private static final int LONGEST_HOURS = 24;

    private final Planning planning;
    private final Visitor visitor;
    private final Clock clock;

    QuickStart(Planning planning, Visitor visitor, Clock clock) {
        this.planning = planning;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * What the question shows.
     *
     * @param action where the answer goes
     * @param back the page that the question came from
     * @param until by the clock of the site
     */
    record Question(
            String where,
            String action,
            String back,
            int hours,
            String until,
            String zone,
            String title,
            Faults faults) {}

    @CheckedTemplate(basePath = "planned")
    static class Templates {
        private Templates() {}

        static native TemplateInstance start(Question question);
    }

    @GET
    @Path("sites/{id}/planned/start")
    public TemplateInstance askSite(@RestPath long id, @RestQuery @DefaultValue("2") int hours) {
        return ask(new Where(Reach.SITE, id), hours, "Work on site", Faults.NONE);
    }

    @GET
    @Path("devices/{id}/planned/start")
    public TemplateInstance askDevice(@RestPath long id, @RestQuery @DefaultValue("2") int hours) {
        return ask(new Where(Reach.DEVICE, id), hours, "Work on the device", Faults.NONE);
    }

    @POST
    @Path("sites/{id}/planned/start")
    public Response startSite(
            @RestPath long id, @RestForm @DefaultValue("2") int hours, @RestForm @DefaultValue("") String title) {
        return start(new Where(Reach.SITE, id), hours, title);
    }

    @POST
    @Path("devices/{id}/planned/start")
    public Response startDevice(
            @RestPath long id, @RestForm @DefaultValue("2") int hours, @RestForm @DefaultValue("") String title) {
        return start(new Where(Reach.DEVICE, id), hours, title);
    }

    private Response start(Where where, int hours, String title) {
        Target target = target(where);
        try {
            planning.start(visitor.scope(), where, Duration.ofHours(bounded(hours)), title);
            return Response.seeOther(URI.create(page(where))).build();
        } catch (InputRejected e) {
            Faults faults = new Faults(e.faults());
            return Response.status(422)
                    .entity(Templates.start(question(where, target, bounded(hours), title, faults)))
                    .build();
        }
    }

    private TemplateInstance ask(Where where, int hours, String title, Faults faults) {
        return Templates.start(question(where, target(where), bounded(hours), title, faults));
    }

    private Question question(Where where, Target target, int hours, String title, Faults faults) {
        Instant now = clock.instant();
        return new Question(
                target.words(),
                page(where) + "/planned/start",
                page(where),
                hours,
                WorkWords.end(now.plus(Duration.ofHours(hours)), now, target.zone()),
                target.zone().getId(),
                title,
                faults);
    }

    private static int bounded(int hours) {
        return Math.max(1, Math.min(LONGEST_HOURS, hours));
    }

    private static String page(Where where) {
        return (where.reach() == Reach.SITE ? "/sites/" : "/devices/") + where.id();
    }

    private Target target(Where where) {
        try {
            return planning.target(visitor.scope(), where);
        } catch (InputRejected e) {
            throw new NotFoundException(e);
        }
    }
}
