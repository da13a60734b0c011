package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.claims.Stay.Standing;
import org.roundsman.claims.Swaps.Place;
import org.roundsman.claims.store.ClaimTable;
import org.roundsman.claims.store.SpareTable;
import org.roundsman.claims.store.StayTable;
import org.roundsman.claims.store.UnitTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;

/**
 * Puts another unit into a place. The place keeps its name, address, credentials, port, readings and history. Until the device
 * itself says the new serial number, the replacement is announced; when it says another one, that is shown, and nothing is
 * taken for true until a person decides. Every method throws {@link InputRejected} with a fault of {@code id} when the device is
 * not there or lies outside the scope.
 */
@ApplicationScoped
@Transactional
public class Replacements {

    private static final int BEFORE = 2;

    private final UnitTable units;
    private final StayTable stays;
    private final SpareTable spares;
    private final ClaimTable claims;
    private final Swaps swaps;

    @Inject
    Replacements(DataSource database, Swaps swaps) {
        this.units = new UnitTable(database);
        this.stays = new StayTable(database);
        this.spares = new SpareTable(database);
        this.claims = new ClaimTable(database);
        this.swaps = swaps;
    }

    /**
     * The new unit is in the place.
     *
     * @throws InputRejected naming each field that cannot be taken; the empty field when a replacement is announced there
     *     already, or another unit was entered at the same moment
     */
    public Stay announce(CustomerScope scope, ReplacementDraft draft) {
        Place place = swaps.place(scope, draft.deviceId());
        Optional<Stay> now = stays.hold(draft.deviceId());
        now.filter(Stay::awaited).ifPresent(Replacements::announcedAlready);
        Instant at = swaps.moment(draft.at());
        new EntryCheck()
                .text("note", draft.note(), 0, 1000)
                .that("old", draft.old() != null, "say what becomes of the unit that stood there")
                .that("at", !at.isAfter(swaps.now()), "a moment that has been")
                .done();
        Unit fresh = fresh(scope, place, draft);
        boolean noticed = now.filter(stay -> stay.isOf(fresh.serial())).isPresent();
        Optional<Stay> former = noticed ? before(place, now.get(), at) : now;
        former.ifPresent(stay -> new EntryCheck()
                .that("at", !at.isBefore(stay.from()), "the unit before stands here since a later moment")
                .done());
        requireFree(fresh, draft.deviceId());
        Optional<Claim> claim = claim(scope, draft, former);
        if (noticed) {
            stays.end(former.orElseThrow().id(), at);
            stays.from(now.get().id(), at);
            stays.confirm(now.get().id(), swaps.by(), swaps.now());
        } else {
            former.ifPresent(stay -> stays.end(stay.id(), at));
            swaps.begin(place, fresh, at, Standing.ANNOUNCED);
        }
        swaps.arrive(place, fresh, at);
        former.ifPresent(stay -> swaps.away(scope, stay, draft, at));
        Stay after = stays.now(draft.deviceId()).orElseThrow();
        claim.ifPresent(one -> swaps.tell(one, fresh, after));
        swaps.noteReplaced(place, former, after, draft);
        return after;
    }

    private static void announcedAlready(Stay stay) {
        throw EntryCheck.refused(
                "",
                "a replacement is announced here already, serial number " + stay.serial()
                        + ": withdraw it first, or wait until the device says it");
    }

    /** The stay before the one that goes on, which the device was first to tell of. */
    private Optional<Stay> before(Place place, Stay now, Instant at) {
        List<Stay> past = stays.ofDevice(place.deviceId(), BEFORE);
        new EntryCheck()
                .that("serial", past.size() == BEFORE, "this unit stands here already")
                .that("at", !at.isAfter(now.from()), "the device says this serial number since an earlier moment")
                .done();
        return Optional.of(past.get(1));
    }

    private Unit fresh(CustomerScope scope, Place place, ReplacementDraft draft) {
        if (draft.spareId() != null) {
            new EntryCheck()
                    .that(
                            "serial",
                            draft.serial() == null || draft.serial().isBlank(),
                            "either a spare or a serial number")
                    .done();
            // Two people may take the same one: the second is told that it is gone.
            spares.find(scope.onlyCustomer(), draft.spareId())
                    .ifPresent(one -> units.hold(one.unit().id()));
            Spare spare = spares.find(scope.onlyCustomer(), draft.spareId())
                    .filter(one -> one.leftAt().isEmpty())
                    .filter(one ->
                            one.unit().owner().isEmpty() || one.unit().owner().getAsLong() == place.customerId())
                    .orElseThrow(() -> EntryCheck.refused("spare", "this spare lies in store no more"));
            return swaps.owned(spare.unit(), place.customerId());
        }
        new EntryCheck()
                .text("serial", draft.serial(), 1, 120)
                .that("model", draft.modelId() == null || units.hasModel(draft.modelId()), "choose a model")
                .done();
        OptionalLong model = draft.modelId() == null ? place.modelId() : OptionalLong.of(draft.modelId());
        return swaps.known(place, draft.serial().strip(), model, "");
    }

    private void requireFree(Unit unit, long deviceId) {
        for (Stay stay : stays.nowOf(unit.id())) {
            boolean here = stay.deviceId().isPresent() && stay.deviceId().getAsLong() == deviceId;
            new EntryCheck()
                    .that("serial", here, "this unit stands at " + stay.device() + ", " + stay.site())
                    .done();
        }
        boolean scrapped = unit.fate().filter(fate -> fate == Fate.SCRAPPED).isPresent();
        new EntryCheck().that("serial", !scrapped, "this unit was scrapped").done();
    }

    private Optional<Claim> claim(CustomerScope scope, ReplacementDraft draft, Optional<Stay> former) {
        Optional<Claim> open = former.flatMap(stay -> claims.open(stay.unitId()));
        if (draft.claimId() != null) {
            Optional<Claim> named = claims.find(scope.onlyCustomer(), draft.claimId());
            boolean same = named.isPresent()
                    && open.filter(one -> one.id() == draft.claimId()).isPresent();
            new EntryCheck()
                    .that("claim", same, "this claim is closed, or is not about the unit that stands here")
                    .done();
        }
        return open;
    }

    /**
     * The announced unit did not come: the one before stands there on, as if nothing had been said.
     *
     * @throws InputRejected when nothing is announced; {@code former} when the one before stands elsewhere by now
     */
    public void withdraw(CustomerScope scope, long deviceId) {
        Place place = swaps.place(scope, deviceId);
        Stay announced = announced(deviceId);
        Optional<Stay> former = undo(scope, place, announced);
        swaps.noteWithdrawn(place, announced, former.map(Stay::serial).orElse(""));
    }

    /**
     * What the device says is true, and the announcement was not.
     *
     * @throws InputRejected when nothing is announced that the device contradicts
     */
    public Stay accept(CustomerScope scope, long deviceId) {
        Place place = swaps.place(scope, deviceId);
        Stay announced = announced(deviceId);
        new EntryCheck()
                .that("", announced.contradicted(), "the device says nothing against the announced unit")
                .done();
        Optional<Stay> former = former(place);
        if (former.filter(stay -> stay.isOf(announced.instead())).isPresent()) {
            undo(scope, place, announced);
        } else {
            instead(place, announced, former);
        }
        swaps.noteAccepted(place, announced);
        return stays.now(deviceId).orElseThrow();
    }

    /** A third unit came: the one before left all the same, and what was said of where it went stays true. */
    private void instead(Place place, Stay announced, Optional<Stay> former) {
        forget(announced);
        Unit unit = swaps.known(place, announced.instead(), place.modelId(), stays.mac(place.deviceId()));
        swaps.begin(place, unit, announced.from(), Standing.CONFIRMED);
        swaps.arrive(place, unit, announced.from());
        Stay after = stays.now(place.deviceId()).orElseThrow();
        former.flatMap(stay -> claims.open(stay.unitId())).ifPresent(claim -> swaps.tell(claim, unit, after));
    }

    /** One unit stands in one place: what was said of another place comes first. */
    private void requireNowhere(CustomerScope scope, Stay former) {
        stays.nowOf(former.unitId()).stream().findFirst().ifPresent(other -> {
            String first = other.awaited() ? "withdraw that first" : "put another unit in its place there first";
            throw EntryCheck.refused(
                    "former", "serial number " + former.serial() + " stands " + other.spot(scope) + "; " + first);
        });
    }

    /** The announced unit goes back to where it lay. */
    private void forget(Stay announced) {
        stays.remove(announced.id());
        if (spares.putBack(announced.unitId(), Swaps.PUT_IN_PLACE)) {
            swaps.noteBack(spares.ofUnit(announced.unitId()).orElseThrow());
        }
    }

    /** The stay before the announced one. */
    private Optional<Stay> former(Place place) {
        return stays.ofDevice(place.deviceId(), BEFORE).stream().skip(1).findFirst();
    }

    private Stay announced(long deviceId) {
        return stays.hold(deviceId)
                .filter(Stay::awaited)
                .orElseThrow(() -> EntryCheck.refused(
                        "",
                        "no replacement is announced here now: somebody withdrew or settled it, or the device tells"
                                + " its new unit by now"));
    }

    private Optional<Stay> undo(CustomerScope scope, Place place, Stay announced) {
        Optional<Stay> former = former(place);
        former.ifPresent(stay -> requireNowhere(scope, stay));
        forget(announced);
        former.ifPresent(stay -> {
            stays.reopen(stay.id());
            Unit unit = swaps.owned(units.find(stay.unitId()).orElseThrow(), place.customerId());
            swaps.arrive(place, unit, announced.from());
            claims.open(stay.unitId()).ifPresent(claim -> swaps.untell(claim, announced));
        });
        return former;
    }
}
