package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.claims.store.RoomTable;
import org.roundsman.claims.store.SpareTable;
import org.roundsman.claims.store.StayTable;
import org.roundsman.claims.store.UnitTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.shared.Page;

/**
 * What lies in store: in rooms and at sites. A unit belongs to the customer in whose room or at whose site it lies; in the
 * firm's own rooms it stays whose it was. Whose room or site lies outside the scope sees and changes nothing of it.
 */
@ApplicationScoped
@Transactional
public class Spares {

    private final SpareTable spares;
    private final Rest rest;
    private final Sites sites;
    private final AuditTrail audit;
    private final Clock clock;

    @Inject
    Spares(DataSource database, Sites sites, AuditTrail audit, Clock clock) {
        this.spares = new SpareTable(database);
        this.rest = new Rest(new RoomTable(database), new UnitTable(database), new StayTable(database));
        this.sites = sites;
        this.audit = audit;
        this.clock = clock;
    }

    /** Other tables. */
    private record Rest(RoomTable rooms, UnitTable units, StayTable stays) {}

    /** Where something can lie, and whose that place is. */
    private record Spot(OptionalLong room, OptionalLong site, OptionalLong owner, String words) {}

    /** All that lies in store, by place, model and serial number. */
    public List<Spare> all(CustomerScope scope) {
        return spares.present(scope.onlyCustomer());
    }

    /**
     * One page of it; the last one where there are fewer.
     *
     * @param number from 1
     * @param size the most on a page, from 1
     */
    public Page<Spare> page(CustomerScope scope, int number, int size) {
        return spares.page(scope.onlyCustomer(), number, size);
    }

    /** The same by id, those after that id, at most so many. */
    public List<Spare> after(CustomerScope scope, long id, int most) {
        return spares.after(scope.onlyCustomer(), id, most);
    }

    /** What lies in store or lay there; empty when there is none or it lies outside the scope. */
    public Optional<Spare> find(CustomerScope scope, long id) {
        return spares.find(scope.onlyCustomer(), id);
    }

    /** What may be put into a place of that customer: its own units, wherever they lie, and the firm's own. */
    public List<Spare> usableBy(CustomerScope scope, long customerId) {
        return all(scope).stream()
                .filter(one ->
                        one.unit().owner().isEmpty() || one.unit().owner().getAsLong() == customerId)
                .toList();
    }

    /**
     * Puts a unit into store.
     *
     * @throws InputRejected naming each field that cannot be taken
     */
    public Spare add(CustomerScope scope, SpareDraft draft) {
        new EntryCheck()
                .text("serial", draft.serial(), 1, 120)
                .text("note", draft.note(), 0, 1000)
                .that("model", draft.modelId() == null || rest.units().hasModel(draft.modelId()), "choose a model")
                .done();
        Spot spot = spot(scope, draft.roomId(), draft.siteId());
        requireFree(scope, draft.serial().strip());
        Instant now = now();
        OptionalLong model = draft.modelId() == null ? OptionalLong.empty() : OptionalLong.of(draft.modelId());
        Unit unit = rest.units().ensure(spot.owner(), draft.serial().strip(), model, "", now);
        spares.ofUnit(unit.id()).ifPresent(there -> {
            throw EntryCheck.refused("serial", "this unit lies in store already: " + there.where());
        });
        return store(unit, spot, draft.note().strip(), now);
    }

    /** Whoever is said to own it: one unit is not in a place and in a store. */
    private void requireFree(CustomerScope scope, String serial) {
        rest.stays().nowOf(serial).stream().findFirst().ifPresent(stay -> {
            throw EntryCheck.refused("serial", "this unit stands " + stay.spot(scope));
        });
    }

    /** Puts a known unit that stands nowhere into store, wherever it was before. */
    Spare store(CustomerScope scope, Unit unit, SpareDraft where) {
        Spot spot = spot(scope, where.roomId(), where.siteId());
        return store(owned(unit, spot.owner()), spot, where.note().strip(), now());
    }

    private Spare store(Unit unit, Spot spot, String note, Instant now) {
        rest.units().fate(unit.id(), Optional.empty(), now);
        spares.add(unit.id(), spot.room(), spot.site(), now, note);
        Spare made = spares.ofUnit(unit.id()).orElseThrow();
        audit.added(subject(made), fields(made));
        return made;
    }

    /** The unit as that customer's; as whose it was, where the place is the firm's own. */
    private Unit owned(Unit unit, OptionalLong owner) {
        if (owner.isEmpty() || unit.owner().equals(owner)) {
            return unit;
        }
        new EntryCheck()
                .that(
                        "where",
                        rest.units().find(owner, unit.serial()).isEmpty(),
                        "the owner of that place has another unit of the serial number " + unit.serial() + " already")
                .done();
        rest.units().owner(unit.id(), owner);
        return rest.units().find(unit.id()).orElseThrow();
    }

    /**
     * Moves a spare to another room or site.
     *
     * @throws InputRejected naming what cannot be taken
     */
    public Spare move(CustomerScope scope, long id, Long roomId, Long siteId) {
        Spare before = require(scope, id);
        Spot spot = spot(scope, roomId, siteId);
        new EntryCheck()
                .that(
                        "where",
                        !(spot.room().equals(before.roomId()) && spot.site().equals(before.siteId())),
                        "it lies there already")
                .done();
        Unit unit = owned(before.unit(), spot.owner());
        spares.leave(unit.id(), now(), "moved to " + spot.words(), audit.actor().name());
        spares.add(unit.id(), spot.room(), spot.site(), now(), before.note());
        Spare after = spares.ofUnit(unit.id()).orElseThrow();
        audit.changed(subject(after), fields(before), fields(after));
        return after;
    }

    /**
     * Takes a spare out of store for good.
     *
     * @param fate what becomes of it; empty where that is not known, or said elsewhere
     * @throws InputRejected naming what cannot be taken
     */
    public void takeAway(CustomerScope scope, long id, Optional<Fate> fate, String why) {
        Spare before = require(scope, id);
        new EntryCheck().text("why", why, 1, 300).done();
        spares.leave(before.unit().id(), now(), why.strip(), audit.actor().name());
        rest.units().fate(before.unit().id(), fate, now());
        audit.changed(
                subject(before),
                fields(before),
                left(before, why.strip())
                        .with("became of it", fate.map(Fate::word).orElse("")));
    }

    private Spot spot(CustomerScope scope, Long roomId, Long siteId) {
        new EntryCheck()
                .that("where", (roomId == null) != (siteId == null), "choose a store room or a site")
                .done();
        if (roomId != null) {
            StoreRoom room = rest.rooms()
                    .find(scope.onlyCustomer(), roomId)
                    .orElseThrow(() -> EntryCheck.refused("where", "there is no such store room"));
            return new Spot(OptionalLong.of(roomId), OptionalLong.empty(), room.customerId(), room.words());
        }
        Site site = sites.find(scope, siteId).orElseThrow(() -> EntryCheck.refused("where", "there is no such site"));
        return new Spot(
                OptionalLong.empty(),
                OptionalLong.of(siteId),
                OptionalLong.of(site.customer.id),
                site.name + ", " + site.customer.name);
    }

    /** Its unit is held first: of two people who take the same spare, the second is told that it is gone. */
    private Spare require(CustomerScope scope, long id) {
        find(scope, id).ifPresent(one -> rest.units().hold(one.unit().id()));
        return find(scope, id)
                .filter(one -> one.leftAt().isEmpty())
                .orElseThrow(() -> EntryCheck.refused("id", "this spare lies in store no more"));
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    static Subject subject(Spare spare) {
        OptionalLong owner = spare.unit().owner();
        return new Subject("spare", spare.id(), spare.unit().serial(), owner.isPresent() ? owner.getAsLong() : null);
    }

    static FieldSet fields(Spare spare) {
        return new FieldSet()
                .with("serial number", spare.unit().serial())
                .with("model", spare.unit().model())
                .with("lies", spare.where())
                .with("note", spare.note());
    }

    /** The same of a spare that lies in store no more. */
    static FieldSet left(Spare spare, String why) {
        return new FieldSet()
                .with("serial number", spare.unit().serial())
                .with("model", spare.unit().model())
                .with("note", spare.note())
                .with("taken away", why);
    }
}
