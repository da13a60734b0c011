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
import java.time.Clock;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimBook;
import org.roundsman.claims.ClaimState;
import org.roundsman.claims.Claims;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** One claim: what is known, and moving it on. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class OneClaim {

    private final ClaimBook book;
    private final Claims claims;
    private final Visitor visitor;
    private final Clock clock;

    OneClaim(ClaimBook book, Claims claims, Visitor visitor, Clock clock) {
        this.book = book;
        this.claims = claims;
        this.visitor = visitor;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "claims")
    static class Templates {
        private Templates() {}

        static native TemplateInstance claim(ClaimView view, String note, Faults faults);
    }

    @GET
    @Path("claims/{id}")
    public TemplateInstance show(@RestPath long id) {
        return page(id, Optional.empty(), "", Faults.NONE);
    }

    private TemplateInstance page(long id, Optional<PapersForm> entered, String note, Faults faults) {
        Claim claim = book.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        ClaimView view = new ClaimView(
                claim,
                ClaimWords.line(claim, clock.instant()),
                ClaimWords.steps(claim.state()),
                book.changes(visitor.scope(), id).stream()
                        .map(change -> ClaimWords.change(change, claim))
                        .toList(),
                ClaimWords.orZero(claim.deviceId()),
                ClaimWords.orZero(claim.alarmId()),
                ClaimWords.orZero(claim.newUnitId()),
                Words.moment(claim.openedAt(), claim.known().zone()) + " by " + claim.openedBy(),
                entered.map(PapersForm::shown).orElse(PapersForm.of(claim.papers())));
        return Templates.claim(view, note, faults);
    }

    /** To the state of that word. */
    @POST
    @Path("claims/{id}/move")
    public Response move(@RestPath long id, @RestForm String state, @RestForm String note) {
        String text = Entry.text(note);
        ClaimState to = ClaimState.of(Entry.text(state)).orElse(null);
        return done(id, Optional.empty(), text, () -> claims.move(visitor.scope(), id, to, text));
    }

    @POST
    @Path("claims/{id}/note")
    public Response note(@RestPath long id, @RestForm String note) {
        String text = Entry.text(note);
        return done(id, Optional.empty(), text, () -> claims.note(visitor.scope(), id, text));
    }

    @POST
    @Path("claims/{id}/papers")
    public Response papers(@RestPath long id, @BeanParam PapersForm form) {
        return done(id, Optional.of(form), "", () -> claims.papers(visitor.scope(), id, form.papers()));
    }

    private interface Work {
        Claim run();
    }

    private Response done(long id, Optional<PapersForm> entered, String note, Work work) {
        try {
            work.run();
            return Response.seeOther(URI.create("/claims/" + id)).build();
        } catch (InputRejected e) {
            if (e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
            return Response.status(422)
                    .entity(page(id, entered, note, new Faults(e.faults())))
                    .build();
        }
    }
}
