package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.claims.StayRules.Step;
import org.roundsman.claims.store.PurchaseTable;
import org.roundsman.claims.store.SpareTable;
import org.roundsman.claims.store.StayTable;
import org.roundsman.claims.store.UnitTable;
import org.roundsman.fleet.InputRejected;

/**
 * Keeps which unit stands where, one place in one transaction, whoever it is learnt from. With a unit goes its purchase, and a
 * unit that stands somewhere lies in no store.
 */
@ApplicationScoped
@Transactional
class Stays {

    private static final String STANDS = "it stands in a place";

    private final UnitTable units;
    private final StayTable stays;
    private final SpareTable spares;
    private final PurchaseTable purchases;
    private final AuditTrail audit;

    @Inject
    Stays(DataSource database, AuditTrail audit) {
        this.units = new UnitTable(database);
        this.stays = new StayTable(database);
        this.spares = new SpareTable(database);
        this.purchases = new PurchaseTable(database);
        this.audit = audit;
    }

    /**
     * Takes in what a device says, or once said; returns what was done about it.
     *
     * @throws InputRejected as {@link #begin}
     */
    public Step hear(long deviceId, StayRules.Said said) {
        Optional<StayTable.Place> place = stays.place(deviceId);
        if (place.isEmpty()) {
            return new Step.Nothing();
        }
        Optional<Stay> now = stays.hold(deviceId);
        Step step = StayRules.of(now, stays.ended(deviceId), said);
        if (step instanceof Step.Begin begin) {
            arrive(deviceId, place.get(), begin.serial(), begin.at());
        } else if (step instanceof Step.Follow follow) {
            stays.end(now.orElseThrow().id(), follow.at());
            arrive(deviceId, place.get(), follow.serial(), follow.at());
            note("followed", now.get(), now.get().serial(), follow.serial());
        } else if (step instanceof Step.Confirm) {
            Stay stay = now.orElseThrow();
            stays.confirm(stay.id(), stay.announcedBy(), stay.announcedAt().orElseThrow());
            note("confirmed", stay, "", stay.serial());
        } else if (step instanceof Step.Contradict other) {
            stays.contradict(now.orElseThrow().id(), other.serial(), other.since());
            note("contradicted", now.get(), now.get().serial(), other.serial());
        }
        return step;
    }

    /** The same with what it says today. */
    public Step hear(long deviceId) {
        return stays.said(deviceId).map(said -> hear(deviceId, said)).orElse(new Step.Nothing());
    }

    private void arrive(long deviceId, StayTable.Place place, String serial, Instant at) {
        OptionalLong owner = OptionalLong.of(place.customerId());
        takeOver(owner, serial);
        Unit unit = units.ensure(owner, serial, place.modelId(), stays.mac(deviceId), at);
        begin(unit, deviceId, at, Stay.Standing.READ, "", null);
        stands(unit, deviceId, at, STANDS);
    }

    /**
     * A device tells no serial number: what a person reads on the unit stands for it from then on. Its purchase stays as it
     * is entered.
     *
     * @throws InputRejected with a fault of {@code serial} when the unit stands elsewhere; else as {@link #begin}
     */
    Unit enter(long deviceId, String serial, Instant since) {
        StayTable.Place place =
                stays.place(deviceId).orElseThrow(() -> EntryCheck.refused("device", "there is no such device"));
        OptionalLong owner = OptionalLong.of(place.customerId());
        takeOver(owner, serial);
        Unit unit = units.ensure(owner, serial, place.modelId(), stays.mac(deviceId), since);
        boolean elsewhere = stays.nowOf(unit.id()).stream()
                .anyMatch(stay -> stay.deviceId().isEmpty() || stay.deviceId().getAsLong() != deviceId);
        new EntryCheck()
                .that("serial", !elsewhere, "this unit stands in another place")
                .done();
        begin(unit, deviceId, since, Stay.Standing.ENTERED, "", null);
        leaveStore(unit, deviceId, since, STANDS);
        note("entered", stays.now(deviceId).orElseThrow(), "", unit.serial());
        return unit;
    }

    /**
     * Begins a stay that goes on.
     *
     * @param by who announced it, with the moment; empty and null where nobody did
     * @throws InputRejected with the empty field when another unit came to stand there at the same moment
     */
    void begin(Unit unit, long deviceId, Instant from, Stay.Standing standing, String by, Instant announced) {
        if (!stays.begin(unit.id(), deviceId, from, standing, by, announced)) {
            throw EntryCheck.refused(
                    "", "at the same moment another unit was entered for this place; look at the place again");
        }
    }

    /** A spare out of the firm's own store that shows up in a place of a customer is that customer's from then on. */
    void takeOver(OptionalLong owner, String serial) {
        if (units.find(owner, serial).isEmpty()) {
            units.find(OptionalLong.empty(), serial)
                    .filter(unit -> spares.ofUnit(unit.id()).isPresent())
                    .ifPresent(unit -> units.owner(unit.id(), owner));
        }
    }

    /** What else changes when a unit comes to stand somewhere. */
    void stands(Unit unit, long deviceId, Instant at, String why) {
        leaveStore(unit, deviceId, at, why);
        List<AuditTrail.Note> notes = new ArrayList<>();
        for (String gone : purchases.leave(deviceId, unit.serial())) {
            notes.add(purchase(unit, gone, "device " + deviceId, ""));
        }
        if (purchases.come(unit.owner().orElseThrow(), deviceId, unit.serial())) {
            notes.add(purchase(unit, unit.serial(), "", "device " + deviceId));
        }
        if (!notes.isEmpty()) {
            audit.note(notes);
        }
    }

    /** What stands somewhere lies in no store, and neither went back nor was scrapped. */
    private void leaveStore(Unit unit, long deviceId, Instant at, String why) {
        if (unit.fate().isPresent()) {
            units.fate(unit.id(), Optional.empty(), at);
        }
        spares.ofUnit(unit.id()).ifPresent(spare -> {
            spares.leave(
                    unit.id(),
                    at.truncatedTo(ChronoUnit.MILLIS),
                    why,
                    audit.actor().name());
            audit.changed(
                    Spares.subject(spare),
                    Spares.fields(spare),
                    Spares.left(spare, why).with("stands as", "device " + deviceId));
        });
    }

    private static AuditTrail.Note purchase(Unit unit, String serial, String old, String fresh) {
        Subject subject = new Subject("purchase", null, serial, unit.owner().orElseThrow());
        return new AuditTrail.Note("changed", subject, List.of(new FieldChange("stands as", old, fresh)));
    }

    private void note(String action, Stay stay, String old, String fresh) {
        Subject subject = new Subject("unit in place", stay.deviceId().orElseThrow(), stay.device(), stay.customerId());
        audit.note(
                List.of(new AuditTrail.Note(action, subject, List.of(new FieldChange("serial number", old, fresh)))));
    }
}
