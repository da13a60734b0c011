package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.claims.store.ClaimTable;
import org.roundsman.claims.store.StayTable;
import org.roundsman.claims.store.UnitTable;
import org.roundsman.fleet.CustomerScope;

/** Writes stays and claims of the past: for moving in from elsewhere, and for demonstration data. */
@ApplicationScoped
@Transactional
public class PastClaims {

    private final UnitTable units;
    private final StayTable stays;
    private final ClaimTable claims;
    private final Covers covers;
    private final AuditTrail audit;

    @Inject
    PastClaims(DataSource database, Covers covers, AuditTrail audit) {
        this.units = new UnitTable(database);
        this.stays = new StayTable(database);
        this.claims = new ClaimTable(database);
        this.covers = covers;
        this.audit = audit;
    }

    /** What is promised for a unit today, in words to be kept. */
    public Cover cover(long deviceId, Unit unit) {
        return covers.of(CustomerScope.everyone(), OptionalLong.of(deviceId), unit);
    }

    /** A unit that stood in a place from then on, until the next of the list, if there is one. */
    public record Stood(String serial, Instant from) {}

    /**
     * The units of a place of which nothing is known yet, in order; the last one stands there still.
     *
     * @return the units, or nothing when it is known already what stood there
     */
    public List<Unit> stood(long deviceId, List<Stood> all) {
        Optional<StayTable.Place> place = stays.place(deviceId);
        if (place.isEmpty() || !stays.ofDevice(deviceId, 1).isEmpty()) {
            return List.of();
        }
        return all.stream()
                .map(stood -> {
                    stays.now(deviceId).ifPresent(before -> stays.end(before.id(), stood.from()));
                    OptionalLong owner = OptionalLong.of(place.get().customerId());
                    Unit unit = units.ensure(owner, stood.serial(), place.get().modelId(), "", stood.from());
                    if (!stays.begin(unit.id(), deviceId, stood.from(), Stay.Standing.READ, "", null)) {
                        throw new IllegalStateException("a unit came to stand at device " + deviceId + " meanwhile");
                    }
                    return unit;
                })
                .toList();
    }

    /** What became of a unit that stands nowhere any more. */
    public void fate(Unit unit, Fate fate, Instant at) {
        units.fate(unit.id(), Optional.of(fate), at);
    }

    /**
     * A claim with all that happened to it, the oldest change first; its own id does not count.
     *
     * @throws IllegalArgumentException when the changes do not lead to its state
     */
    public long add(Claim claim, List<ClaimChange> changes) {
        ClaimState state = null;
        for (ClaimChange change : changes) {
            boolean leads = state == null
                    ? change.to() == ClaimState.OPENED
                    : state == change.to() || state.against(change.to()).isEmpty();
            if (!leads) {
                throw new IllegalArgumentException("a claim cannot go from " + state + " to " + change.to());
            }
            state = change.to();
        }
        if (state != claim.state()) {
            throw new IllegalArgumentException("the changes lead to " + state + ", not to " + claim.state());
        }
        long id = claims.add(claim);
        claims.papers(id, claim.papers());
        claims.replacement(id, claim.newUnitId());
        changes.forEach(one -> claims.change(id, one.at(), one.by(), one.from(), one.to(), one.note()));
        audit.added(
                new Subject("claim", id, claim.known().serial(), claim.customerId()),
                new FieldSet()
                        .with("state", claim.state().word())
                        .with("fault", claim.known().fault()));
        return id;
    }
}
