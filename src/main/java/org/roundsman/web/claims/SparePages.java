package org.roundsman.web.claims;

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
import jakarta.ws.rs.core.StreamingOutput;
import java.net.URI;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.claims.ClaimsCsv;
import org.roundsman.claims.Fate;
import org.roundsman.claims.Shortage;
import org.roundsman.claims.Spare;
import org.roundsman.claims.SpareDraft;
import org.roundsman.claims.Spares;
import org.roundsman.claims.StoreRooms;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** What lies in store: the list, adding, moving and taking away. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class SparePages {

    private static final int A_PAGE = 50;

    private final Spares spares;
    private final StoreRooms rooms;
    private final StoreChoices choices;
    private final Visitor visitor;

    SparePages(Spares spares, StoreRooms rooms, StoreChoices choices, Visitor visitor) {
        this.spares = spares;
        this.rooms = rooms;
        this.choices = choices;
        this.visitor = visitor;
    }

    /** What the form sent, as text. */
    record Form(
            @RestForm String serial,
            @RestForm String model,
            @RestForm String where,
            @RestForm String note) {

        Form shown() {
            return new Form(Entry.text(serial), Entry.text(model), Entry.text(where), Entry.text(note));
        }

        SpareDraft draft() {
            Entry.Where lies = Entry.Where.of(where);
            return new SpareDraft(
                    Entry.text(serial), Entry.id("model", model), lies.room(), lies.site(), Entry.text(note));
        }
    }

    /** A spare in the list. */
    record Line(
            long id,
            long unitId,
            String serial,
            String model,
            String where,
            String since,
            String purchase,
            String note) {}

    /** The list. */
    record Shown(Page<Line> page, List<Shortage> counts, long shortages) {

        /** How many models run short, in words. */
        public String tooFew() {
            return Words.many(shortages, "model runs short", "models run short");
        }
    }

    /** The form. */
    record Adding(Form form, List<Entry.Choice> models, List<StoreChoices.Group> places) {}

    /** The page of one spare. */
    record One(Line line, boolean gone, String left, List<StoreChoices.Group> places, List<Entry.Choice> fates) {}

    @CheckedTemplate(basePath = "claims")
    static class Templates {
        private Templates() {}

        static native TemplateInstance spares(Shown shown);

        static native TemplateInstance addSpare(Adding adding, Faults faults);

        static native TemplateInstance spare(One one, Faults faults);
    }

    @GET
    @Path("spares")
    public TemplateInstance list(@RestQuery @DefaultValue("1") int page) {
        Page<Spare> found = spares.page(visitor.scope(), Math.max(1, page), A_PAGE);
        List<Shortage> counts = rooms.counts(visitor.scope());
        return Templates.spares(new Shown(
                new Page<>(
                        found.items().stream().map(SparePages::line).toList(),
                        found.number(),
                        found.size(),
                        found.total()),
                counts,
                counts.stream().filter(one -> one.missing() > 0).count()));
    }

    private static Line line(Spare spare) {
        return new Line(
                spare.id(),
                spare.unit().id(),
                spare.unit().serial(),
                spare.unit().model(),
                spare.where(),
                spare.since().atZone(java.time.ZoneOffset.UTC).toLocalDate().toString(),
                spare.purchase(),
                spare.note());
    }

    @GET
    @Path("spares.csv")
    @Produces("text/csv")
    public Response download() {
        List<Spare> all = spares.all(visitor.scope());
        StreamingOutput rows = out -> ClaimsCsv.spares(all, out);
        return Response.ok(rows)
                .type("text/csv; charset=utf-8")
                .header("Content-Disposition", "attachment; filename=\"spares.csv\"")
                .build();
    }

    @GET
    @Path("spares/new")
    public TemplateInstance form() {
        return adding(new Form("", "", "", ""), Faults.NONE);
    }

    private TemplateInstance adding(Form form, Faults faults) {
        return Templates.addSpare(
                new Adding(form, choices.models(form.model()), choices.places(visitor.scope(), form.where())), faults);
    }

    @POST
    @Path("spares")
    public Response add(@BeanParam Form form) {
        try {
            Spare made = spares.add(visitor.scope(), form.draft());
            return Response.seeOther(URI.create("/spares/" + made.id())).build();
        } catch (InputRejected e) {
            return Response.status(422)
                    .entity(adding(form.shown(), new Faults(e.faults())))
                    .build();
        }
    }

    @GET
    @Path("spares/{id}")
    public TemplateInstance one(@RestPath long id) {
        return one(id, Faults.NONE);
    }

    private TemplateInstance one(long id, Faults faults) {
        Spare spare = spares.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        return Templates.spare(
                new One(
                        line(spare),
                        spare.leftAt().isPresent(),
                        spare.leftWhy(),
                        choices.places(visitor.scope(), ""),
                        Arrays.stream(Fate.values())
                                .map(fate -> new Entry.Choice(fate.name(), fate.word(), false))
                                .toList()),
                faults);
    }

    @POST
    @Path("spares/{id}/move")
    public Response move(@RestPath long id, @RestForm String where) {
        try {
            Entry.Where lies = Entry.Where.of(where);
            Spare moved = spares.move(visitor.scope(), id, lies.room(), lies.site());
            return Response.seeOther(URI.create("/spares/" + moved.id())).build();
        } catch (InputRejected e) {
            return refused(id, e);
        }
    }

    /** With what becomes of it, if that is known. */
    @POST
    @Path("spares/{id}/away")
    public Response away(@RestPath long id, @RestForm String fate, @RestForm String why) {
        try {
            Optional<Fate> becomes = Arrays.stream(Fate.values())
                    .filter(one -> one.name().equals(fate))
                    .findFirst();
            spares.takeAway(visitor.scope(), id, becomes, Entry.text(why));
            return Response.seeOther(URI.create("/spares")).build();
        } catch (InputRejected e) {
            return refused(id, e);
        }
    }

    /** Somebody else may have taken it meanwhile: its page says where it went. */
    private Response refused(long id, InputRejected e) {
        int status = e.faults().containsKey("id") ? 409 : 422;
        return Response.status(status).entity(one(id, new Faults(e.faults()))).build();
    }
}
