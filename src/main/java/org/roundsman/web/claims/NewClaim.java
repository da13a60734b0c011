package org.roundsman.web.claims;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimDraft;
import org.roundsman.claims.Claims;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Opening a claim. What will stand in it is shown before. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class NewClaim {

    private final Claims claims;
    private final AlarmBook alarms;
    private final Visitor visitor;

    NewClaim(Claims claims, AlarmBook alarms, Visitor visitor) {
        this.claims = claims;
        this.alarms = alarms;
        this.visitor = visitor;
    }

    /** What the form sent, as text. */
    record Form(
            @RestForm String device,
            @RestForm String alarm,
            @RestForm String unit,
            @RestForm String serial,
            @RestForm String fault,
            @RestForm String party) {

        Form shown() {
            return new Form(
                    Entry.text(device),
                    Entry.text(alarm),
                    Entry.text(unit),
                    Entry.text(serial),
                    Entry.text(fault),
                    Entry.text(party));
        }

        ClaimDraft draft() {
            return new ClaimDraft(
                    Entry.id("device", device),
                    Entry.id("alarm", alarm),
                    Entry.id("unit", unit),
                    Entry.text(serial),
                    Entry.text(fault),
                    Entry.text(party));
        }
    }

    @CheckedTemplate(basePath = "claims")
    static class Templates {
        private Templates() {}

        static native TemplateInstance fresh(Claim claim, Form form, Faults faults);
    }

    /** For the unit at that device, at the device of that alarm, or that unit. */
    @GET
    @Path("claims/new")
    public TemplateInstance form(@RestQuery String device, @RestQuery String alarm, @RestQuery String unit) {
        Form form = new Form(device, alarm, unit, "", words(alarm), "").shown();
        return Templates.fresh(look(form), form, Faults.NONE);
    }

    private String words(String alarm) {
        Long id = id(alarm);
        return id == null
                ? ""
                : alarms.find(visitor.scope(), id)
                        .map(one -> one.key().type().title() + ". " + one.text())
                        .orElseThrow(NotFoundException::new);
    }

    private static Long id(String text) {
        try {
            return Entry.id("alarm", text);
        } catch (InputRejected e) {
            throw new NotFoundException(e);
        }
    }

    /** Without the serial number that was entered: that is kept only when the claim is opened. */
    private Claim look(Form form) {
        try {
            ClaimDraft draft = form.draft();
            return claims.look(
                    visitor.scope(),
                    new ClaimDraft(
                            draft.deviceId(), draft.alarmId(), draft.unitId(), "", draft.fault(), draft.party()));
        } catch (InputRejected e) {
            throw new NotFoundException(e);
        }
    }

    @POST
    @Path("claims")
    public Response open(@BeanParam Form form) {
        try {
            Claim made = claims.open(visitor.scope(), form.draft());
            return Response.seeOther(URI.create("/claims/" + made.id())).build();
        } catch (InputRejected e) {
            Form entered = form.shown();
            return Response.status(e.faults().containsKey("") ? 409 : 422)
                    .entity(Templates.fresh(look(entered), entered, new Faults(e.faults())))
                    .build();
        }
    }
}
