package org.roundsman.web.triage;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Visitor;

/** What people do with alarms. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class ActPages {

    private final AlarmDesk desk;
    private final AlarmBook book;
    private final RefusedActs refused;
    private final Visitor visitor;
    private final Clock clock;

    ActPages(AlarmDesk desk, AlarmBook book, RefusedActs refused, Visitor visitor, Clock clock) {
        this.desk = desk;
        this.book = book;
        this.refused = refused;
        this.visitor = visitor;
        this.clock = clock;
    }

    @POST
    @Path("triage/alarms/{id}/acknowledge")
    public Response acknowledge(@RestPath long id, @HeaderParam("HX-Request") String part) {
        require(id);
        return quick(id, part, () -> desk.acknowledge(scope(), id, ""));
    }

    @POST
    @Path("triage/alarms/{id}/take")
    public Response take(@RestPath long id, @HeaderParam("HX-Request") String part) {
        require(id);
        return quick(id, part, () -> desk.take(scope(), id));
    }

    @POST
    @Path("triage/alarms/{id}/release")
    public Response release(@RestPath long id, @HeaderParam("HX-Request") String part) {
        require(id);
        return quick(id, part, () -> desk.release(scope(), id));
    }

    @POST
    @Path("triage/alarms/{id}/unshelve")
    public Response unshelve(@RestPath long id, @HeaderParam("HX-Request") String part) {
        require(id);
        return quick(id, part, () -> desk.unshelve(scope(), id));
    }

    @POST
    @Path("triage/alarms/{id}/note")
    public Response note(@RestPath long id, @BeanParam ActForm form) {
        require(id);
        return slow(id, form, () -> desk.note(scope(), id, form.words()));
    }

    @POST
    @Path("triage/alarms/{id}/shelve")
    public Response shelve(@RestPath long id, @BeanParam ActForm form) {
        OpenAlarm alarm = require(id);
        return slow(id, form, () -> desk.shelve(scope(), id, form.end(alarm.zone(), clock.instant()), form.why()));
    }

    @POST
    @Path("triage/alarms/{id}/close")
    public Response close(@RestPath long id, @BeanParam ActForm form) {
        require(id);
        return slow(id, form, () -> desk.close(scope(), id, form.words()));
    }

    private OpenAlarm require(long id) {
        return book.find(scope(), id).orElseThrow(NotFoundException::new);
    }

    private CustomerScope scope() {
        return visitor.scope();
    }

    /** Where the state has changed meanwhile, so that it cannot be done any more, the page just shows how things stand. */
    private Response quick(long id, String part, Runnable act) {
        try {
            act.run();
        } catch (InputRejected e) {
            return part == null ? refused.page(id, ActForm.EMPTY, e) : changed();
        }
        return part == null ? back(id) : changed();
    }

    private Response slow(long id, ActForm form, Runnable act) {
        try {
            act.run();
            return back(id);
        } catch (InputRejected e) {
            return refused.page(id, form, e);
        }
    }

    /** Has the script refresh list and alarm. */
    private static Response changed() {
        return Response.noContent().header("HX-Trigger", "triage-changed").build();
    }

    private static Response back(long id) {
        return Response.seeOther(URI.create("/triage/alarms/" + id)).build();
    }
}
