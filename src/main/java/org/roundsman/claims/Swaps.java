package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.claims.store.ClaimTable;
import org.roundsman.claims.store.UnitTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;

/** What goes along when a unit comes to a place or leaves it. In the transaction of the caller. */
@ApplicationScoped
class Swaps {

    static final String PUT_IN_PLACE = "put in the place of another unit";

    private final UnitTable units;
    private final ClaimTable claims;
    private final Devices devices;
    private final Keeping keeping;
    private final Clock clock;

    @Inject
    Swaps(DataSource database, Devices devices, Keeping keeping, Clock clock) {
        this.units = new UnitTable(database);
        this.claims = new ClaimTable(database);
        this.devices = devices;
        this.keeping = keeping;
        this.clock = clock;
    }

    /** Who keeps what else. */
    @Singleton
    static class Keeping {
        private final Stays stays;
        private final Spares spares;
        private final AuditTrail audit;
        private final Timeline timeline;

        @Inject
        Keeping(Stays stays, Spares spares, AuditTrail audit, Timeline timeline) {
            this.stays = stays;
            this.spares = spares;
            this.audit = audit;
            this.timeline = timeline;
        }
    }

    /** A device as a place. */
    record Place(long deviceId, String name, long customerId, OptionalLong modelId) {}

    Place place(CustomerScope scope, long deviceId) {
        Device device = devices.find(scope, deviceId)
                .orElseThrow(() -> EntryCheck.refused("id", "this device is not there any more"));
        OptionalLong model = device.model == null ? OptionalLong.empty() : OptionalLong.of(device.model.id);
        return new Place(deviceId, device.name, device.site.customer.id, model);
    }

    Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    /** That moment, or now. */
    Instant moment(Instant at) {
        return at == null ? now() : at.truncatedTo(ChronoUnit.MILLIS);
    }

    String by() {
        return keeping.audit.actor().name();
    }

    /** The unit of that serial number as that customer's, also out of the firm's store; made where it is not known yet. */
    Unit known(Place place, String serial, OptionalLong model, String mac) {
        OptionalLong owner = OptionalLong.of(place.customerId());
        keeping.stays.takeOver(owner, serial);
        return units.ensure(owner, serial, model, mac, now());
    }

    /** The unit as that customer's. */
    Unit owned(Unit unit, long customer) {
        if (unit.owner().isPresent() && unit.owner().getAsLong() == customer) {
            return unit;
        }
        new EntryCheck()
                .that(
                        "spare",
                        units.find(OptionalLong.of(customer), unit.serial()).isEmpty(),
                        "this customer has another unit of the serial number " + unit.serial() + " already")
                .done();
        units.owner(unit.id(), OptionalLong.of(customer));
        return units.find(unit.id()).orElseThrow();
    }

    /**
     * Somebody says that the unit stands there from then on.
     *
     * @throws InputRejected with the empty field when another unit came to stand there at the same moment
     */
    void begin(Place place, Unit unit, Instant from, Stay.Standing standing) {
        keeping.stays.begin(unit, place.deviceId(), from, standing, by(), now());
    }

    /** The unit stands there: it leaves the store, its purchase goes with it, and the place is of its model. */
    void arrive(Place place, Unit unit, Instant at) {
        keeping.stays.stands(unit, place.deviceId(), at, PUT_IN_PLACE);
        Device device = devices.find(CustomerScope.everyone(), place.deviceId()).orElseThrow();
        Long before = device.model == null ? null : device.model.id;
        if (unit.modelId().isPresent()
                && (before == null || before != unit.modelId().getAsLong())) {
            devices.change(
                    place.deviceId(),
                    DeviceDraft.of(device).ofModel(unit.modelId().getAsLong()));
        }
    }

    /** The unit that stood there goes where it is said to. */
    void away(CustomerScope scope, Stay stay, ReplacementDraft draft, Instant at) {
        Unit unit = units.find(stay.unitId()).orElseThrow();
        switch (draft.old()) {
            case SENT_BACK -> units.fate(unit.id(), Optional.of(Fate.SENT_BACK), at);
            case SCRAPPED -> units.fate(unit.id(), Optional.of(Fate.SCRAPPED), at);
            case SPARE ->
                keeping.spares.store(
                        scope,
                        unit,
                        new SpareDraft(
                                unit.serial(), null, draft.roomId(), draft.siteId(), "Taken from " + stay.device()));
        }
    }

    /** The claim says what took the place of its unit. */
    void tell(Claim claim, Unit fresh, Stay stay) {
        claims.replacement(claim.id(), OptionalLong.of(fresh.id()));
        String note = "In its place at " + stay.device() + ": " + fresh.words();
        claims.change(claim.id(), now(), by(), Optional.of(claim.state()), claim.state(), note);
    }

    void untell(Claim claim, Stay announced) {
        claims.replacement(claim.id(), OptionalLong.empty());
        String note = "Withdrawn: serial number " + announced.serial() + " did not take its place";
        claims.change(claim.id(), now(), by(), Optional.of(claim.state()), claim.state(), note);
    }

    void noteReplaced(Place place, Optional<Stay> former, Stay after, ReplacementDraft draft) {
        String old = former.map(Stay::serial).orElse("");
        note(
                place,
                "replaced",
                List.of(
                        new FieldChange("serial number", old, after.serial()),
                        new FieldChange("from", "", after.from().toString()),
                        new FieldChange(
                                "the unit before",
                                "",
                                former.isEmpty() ? "" : draft.old().word()),
                        new FieldChange("note", "", draft.note().strip())));
        String title = after.awaited() ? "Another unit was announced" : "Another unit took the place";
        keeping.timeline.add(List.of(DeviceEvent.change(
                place.deviceId(), after.from(), EventKind.UNIT_REPLACED, title, old, after.serial())));
    }

    void noteWithdrawn(Place place, Stay announced, String serial) {
        note(place, "withdrawn", List.of(new FieldChange("serial number", announced.serial(), serial)));
        keeping.timeline.add(List.of(DeviceEvent.change(
                place.deviceId(),
                now(),
                EventKind.UNIT_REPLACED,
                "The announced unit did not come",
                announced.serial(),
                serial)));
    }

    /** The announced unit lies in store again, where it lay before. */
    void noteBack(Spare spare) {
        keeping.audit.changed(Spares.subject(spare), Spares.left(spare, PUT_IN_PLACE), Spares.fields(spare));
    }

    void noteAccepted(Place place, Stay announced) {
        note(place, "accepted", List.of(new FieldChange("serial number", announced.serial(), announced.instead())));
        keeping.timeline.add(List.of(DeviceEvent.change(
                place.deviceId(),
                now(),
                EventKind.UNIT_REPLACED,
                "The unit that the device names was accepted",
                announced.serial(),
                announced.instead())));
    }

    private void note(Place place, String action, List<FieldChange> changes) {
        Subject subject = new Subject("unit in place", place.deviceId(), place.name(), place.customerId());
        List<FieldChange> told = changes.stream()
                .filter(change -> !change.old().equals(change.fresh()))
                .toList();
        keeping.audit.note(List.of(new Note(action, subject, told)));
    }
}
