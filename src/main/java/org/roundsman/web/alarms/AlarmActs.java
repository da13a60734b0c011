package org.roundsman.web.alarms;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.util.function.BooleanSupplier;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.alarms.AlarmDesk;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.LocalAddress;
import org.roundsman.web.page.Visitor;

/** What technicians and the owner do with an alarm. None of it clears one: alarms clear when the fault is gone. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.OWNER_ROLE})
class AlarmActs {

    private final AlarmDesk desk;
    private final AlarmViews views;
    private final Visitor visitor;
    private final Clock clock;

    AlarmActs(AlarmDesk desk, AlarmViews views, Visitor visitor, Clock clock) {
        this.desk = desk;
        this.views = views;
        this.visitor = visitor;
        this.clock = clock;
    }

    @POST
    @Path("alarms/{id}/acknowledge")
    public Response acknowledge(@RestPath long id, @BeanParam ActForm form) {
        return done(id, form, () -> desk.acknowledge(visitor.scope(), id, form.text()));
    }

    @POST
    @Path("alarms/{id}/take")
    public Response take(@RestPath long id, @BeanParam ActForm form) {
        return done(id, form, () -> desk.take(visitor.scope(), id));
    }

    @POST
    @Path("alarms/{id}/release")
    public Response release(@RestPath long id, @BeanParam ActForm form) {
        return done(id, form, () -> desk.release(visitor.scope(), id));
    }

    @POST
    @Path("alarms/{id}/note")
    public Response note(@RestPath long id, @BeanParam ActForm form) {
        return done(id, form, () -> desk.note(visitor.scope(), id, form.text()));
    }

    @POST
    @Path("alarms/{id}/shelve")
    public Response shelve(@RestPath long id, @BeanParam ActForm form) {
        return done(
                id,
                form,
                () -> desk.shelve(
                        visitor.scope(), id, clock.instant().plus(Duration.ofHours(form.shelfHours())), form.reason()));
    }

    @POST
    @Path("alarms/{id}/unshelve")
    public Response unshelve(@RestPath long id, @BeanParam ActForm form) {
        return done(id, form, () -> desk.unshelve(visitor.scope(), id));
    }

    @POST
    @Path("alarms/{id}/close")
    public Response close(@RestPath long id, @BeanParam ActForm form) {
        return done(id, form, () -> desk.close(visitor.scope(), id, form.text()));
    }

    /** Goes back to where the form stood, or shows the alarm with what is wrong. */
    private Response done(long id, ActForm form, BooleanSupplier act) {
        try {
            if (!act.getAsBoolean()) {
                throw new NotFoundException();
            }
            String back = form.back().isEmpty() ? "/alarms/" + id : LocalAddress.of(form.back());
            return Response.seeOther(URI.create(back)).build();
        } catch (InputRejected e) {
            AlarmView view = views.view(visitor.scope(), id).orElseThrow(NotFoundException::new);
            return Response.status(422)
                    .entity(AlarmPages.Templates.alarm(view, form, new Faults(e.faults())))
                    .build();
        }
    }
}
