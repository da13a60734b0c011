package org.roundsman.web.claims;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
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
import org.roundsman.claims.Shortage;
import org.roundsman.claims.StoreRoom;
import org.roundsman.claims.StoreRooms;
import org.roundsman.fleet.InputRejected;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Store rooms, and how many of a model should lie in each. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class RoomPages {

    private final StoreRooms rooms;
    private final StoreChoices choices;
    private final Visitor visitor;

    RoomPages(StoreRooms rooms, StoreChoices choices, Visitor visitor) {
        this.rooms = rooms;
        this.choices = choices;
        this.visitor = visitor;
    }

    /** What was entered for a room. */
    record Form(String name, String note, String customer) {}

    /** The list, and the form of a new room. */
    record Shown(List<StoreRoom> rooms, Form form, List<Entry.Choice> customers) {}

    /** The page of one room. */
    record One(StoreRoom room, Form form, List<Shortage> counts, List<Entry.Choice> models, boolean removable) {}

    @CheckedTemplate(basePath = "claims")
    static class Templates {
        private Templates() {}

        static native TemplateInstance rooms(Shown shown, Faults faults);

        static native TemplateInstance room(One one, Faults faults);
    }

    @GET
    @Path("store-rooms")
    public TemplateInstance list() {
        return list(new Form("", "", ""), Faults.NONE);
    }

    private TemplateInstance list(Form form, Faults faults) {
        return Templates.rooms(
                new Shown(rooms.all(visitor.scope()), form, choices.customers(visitor.scope(), form.customer())),
                faults);
    }

    @POST
    @Path("store-rooms")
    public Response add(@RestForm String name, @RestForm String note, @RestForm String customer) {
        try {
            StoreRoom made =
                    rooms.add(visitor.scope(), Entry.id("customer", customer), Entry.text(name), Entry.text(note));
            return room(made.id());
        } catch (InputRejected e) {
            Form form = new Form(Entry.text(name), Entry.text(note), Entry.text(customer));
            return Response.status(422)
                    .entity(list(form, new Faults(e.faults())))
                    .build();
        }
    }

    private static Response room(long id) {
        return Response.seeOther(URI.create("/store-rooms/" + id)).build();
    }

    @GET
    @Path("store-rooms/{id}")
    public TemplateInstance one(@RestPath long id) {
        return one(id, null, Faults.NONE);
    }

    private TemplateInstance one(long id, Form entered, Faults faults) {
        StoreRoom room = rooms.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
        Form form = entered == null ? new Form(room.name(), room.note(), "") : entered;
        List<Shortage> counts = rooms.counts(visitor.scope()).stream()
                .filter(one -> one.roomId() == id)
                .toList();
        return Templates.room(new One(room, form, counts, choices.models(""), room.spares() == 0), faults);
    }

    @POST
    @Path("store-rooms/{id}")
    public Response change(@RestPath long id, @RestForm String name, @RestForm String note) {
        Form form = new Form(Entry.text(name), Entry.text(note), "");
        return done(id, form, () -> rooms.change(visitor.scope(), id, form.name(), form.note()));
    }

    /** 0 for no wish. */
    @POST
    @Path("store-rooms/{id}/least")
    public Response least(@RestPath long id, @RestForm String model, @RestForm String least) {
        return done(id, null, () -> {
            Long of = Entry.id("model", model);
            rooms.wish(visitor.scope(), id, of == null ? 0 : of, Entry.number("least", least));
        });
    }

    @POST
    @Path("store-rooms/{id}/remove")
    public Response remove(@RestPath long id) {
        try {
            rooms.remove(visitor.scope(), id);
            return Response.seeOther(URI.create("/store-rooms")).build();
        } catch (InputRejected e) {
            Faults faults = new Faults(e.faults());
            return Response.status(422).entity(one(id, null, faults)).build();
        }
    }

    private Response done(long id, Form entered, Runnable work) {
        try {
            work.run();
            return room(id);
        } catch (InputRejected e) {
            return Response.status(422)
                    .entity(one(id, entered, new Faults(e.faults())))
                    .build();
        }
    }
}
