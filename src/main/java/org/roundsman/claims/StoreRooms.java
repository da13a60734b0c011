package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.claims.store.RoomTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.Models;

/** Rooms for spares, and how many of a model should lie in each. */
@ApplicationScoped
@Transactional
public class StoreRooms {

    /** More of one model than this nobody keeps. */
    public static final int MOST = 1_000;

    private final RoomTable table;
    private final Models models;
    private final AuditTrail audit;

    @Inject
    StoreRooms(DataSource database, Models models, AuditTrail audit) {
        this.table = new RoomTable(database);
        this.models = models;
        this.audit = audit;
    }

    /** Those in the scope: the firm's own only for who sees everybody. */
    public List<StoreRoom> all(CustomerScope scope) {
        return table.all(scope.onlyCustomer());
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<StoreRoom> find(CustomerScope scope, long id) {
        return table.find(scope.onlyCustomer(), id);
    }

    /** What lies in each room by model, and what should. */
    public List<Shortage> counts(CustomerScope scope) {
        return table.counts(scope.onlyCustomer());
    }

    /**
     * Adds a room.
     *
     * @param customerId whose; null for the firm's own
     * @throws InputRejected naming each field that cannot be taken
     */
    public StoreRoom add(CustomerScope scope, Long customerId, String name, String note) {
        OptionalLong owner = customerId == null ? OptionalLong.empty() : OptionalLong.of(customerId);
        boolean own = customerId == null ? scope.onlyCustomer() == null : scope.includes(customerId);
        check(owner, name, note, 0)
                .that("customer", own, "there is no such customer")
                .done();
        StoreRoom made =
                table.find(null, table.add(owner, name.strip(), note.strip())).orElseThrow();
        audit.added(subject(made), fields(made));
        return made;
    }

    /**
     * Gives a room another name and note.
     *
     * @throws InputRejected naming each field that cannot be taken
     */
    public StoreRoom change(CustomerScope scope, long id, String name, String note) {
        StoreRoom before = require(scope, id);
        check(before.customerId(), name, note, id).done();
        table.change(id, name.strip(), note.strip());
        StoreRoom after = table.find(null, id).orElseThrow();
        audit.changed(subject(after), fields(before), fields(after));
        return after;
    }

    private EntryCheck check(OptionalLong owner, String name, String note, long id) {
        table.holdNames();
        EntryCheck check = new EntryCheck().text("name", name, 1, 120).text("note", note, 0, 1000);
        boolean taken = name != null && table.taken(owner, name.strip(), id);
        return check.that("name", !taken, "there is a room of this name already");
    }

    /**
     * Removes a room in which nothing ever lay.
     *
     * @throws InputRejected when there is no such room, or something lies or lay there
     */
    public void remove(CustomerScope scope, long id) {
        StoreRoom room = require(scope, id);
        new EntryCheck()
                .that("id", !table.used(id), "spares lie or lay here; their history names the room")
                .done();
        table.remove(id);
        audit.did("removed", subject(room));
    }

    /**
     * Says how many of a model should lie in a room; 0 for no wish.
     *
     * @throws InputRejected naming what cannot be taken
     */
    public void wish(CustomerScope scope, long id, long modelId, int least) {
        StoreRoom room = require(scope, id);
        Optional<Model> model =
                models.all().stream().filter(one -> one.id == modelId).findFirst();
        new EntryCheck()
                .that("model", model.isPresent(), "choose a model")
                .that("least", least >= 0 && least <= MOST, "from 0 to " + MOST)
                .done();
        String field = "at least of " + model.get().maker + " " + model.get().name;
        FieldSet before = new FieldSet().with(field, table.least(id, modelId));
        table.wish(id, modelId, least);
        audit.changed(subject(room), before, new FieldSet().with(field, least));
    }

    private StoreRoom require(CustomerScope scope, long id) {
        return find(scope, id).orElseThrow(() -> EntryCheck.refused("id", "there is no such store room"));
    }

    private static Subject subject(StoreRoom room) {
        Long customer = room.customerId().isPresent() ? room.customerId().getAsLong() : null;
        return new Subject("store room", room.id(), room.name(), customer);
    }

    private static FieldSet fields(StoreRoom room) {
        return new FieldSet()
                .with("name", room.name())
                .with("customer", room.customer())
                .with("note", room.note());
    }
}
