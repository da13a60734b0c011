package org.roundsman.boot;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.claims.Claim;
import org.roundsman.claims.ClaimChange;
import org.roundsman.claims.ClaimState;
import org.roundsman.claims.Cover;
import org.roundsman.claims.Fate;
import org.roundsman.claims.PastClaims;
import org.roundsman.claims.SpareDraft;
import org.roundsman.claims.Spares;
import org.roundsman.claims.StoreRoom;
import org.roundsman.claims.StoreRooms;
import org.roundsman.claims.Unit;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.warranty.CoverStatus;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;

/** Adds invented spares and claims to the invented fleet, once: whoever has a store room already keeps things as they are. */
@ApplicationScoped
class DemoClaimsSowing {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final String WHO = "wren (invented)";
    private static final String MAKER = "Tamarack Radio";
    private static final int SHOWN = 3;
    private static final int WISHED = 4;

    /** Purchases say what is covered; they are sown at the usual priority, 2500. */
    private static final int AFTER_PURCHASES = 5_000;

    private final StoreRooms rooms;
    private final Spares spares;
    private final PastClaims past;
    private final Devices devices;
    private final Warranties warranties;

    @Inject
    DemoClaimsSowing(StoreRooms rooms, Spares spares, PastClaims past, Devices devices, Warranties warranties) {
        this.rooms = rooms;
        this.spares = spares;
        this.past = past;
        this.devices = devices;
        this.warranties = warranties;
    }

    void sow(@Observes @Priority(AFTER_PURCHASES) DemoSown sown) {
        if (rooms.all(ALL).isEmpty()) {
            fill(sown);
        }
    }

    void fill(DemoSown sown) {
        Map<Long, UnitCover> covers = warranties.of(ALL, sown.ids().values());
        List<DemoDevice> chosen = sown.fleet().devices().stream()
                .filter(device -> device.isAccessPoint() && device.standing().isEmpty())
                .filter(device -> covered(covers.get(sown.ids().get(device.number()))))
                .limit(SHOWN)
                .toList();
        if (chosen.size() == SHOWN) {
            sowSpares(sown, chosen.get(2));
            replaced(sown, chosen.get(0));
            sent(sown, chosen.get(1));
        }
    }

    /** A claim on what is covered no more would be an odd example. */
    private static boolean covered(UnitCover cover) {
        return cover != null && cover.status() != CoverStatus.ENDED && cover.status() != CoverStatus.MISSING;
    }

    /** One of them answers when the fault "unit swapped" is switched on, so that a replacement can be tried. */
    private void sowSpares(DemoSown sown, DemoDevice swapped) {
        Device place = device(sown, swapped);
        StoreRoom shelf = rooms.add(ALL, null, "Workshop shelf", DemoFleet.NOTE);
        StoreRoom cellar = rooms.add(ALL, place.site.customer.id, "Cellar cupboard", DemoFleet.NOTE);
        Long model = place.model == null ? null : place.model.id;
        add(
                swapped.swappedSerial(),
                model,
                shelf,
                "Stands at " + swapped.name() + " when the fault \"unit swapped\" is on");
        for (int i = 1; i <= 2; i++) {
            add("INV-SP-000" + i, model, i == 1 ? shelf : cellar, DemoFleet.NOTE);
        }
        if (model != null) {
            rooms.wish(ALL, shelf.id(), model, WISHED);
            rooms.wish(ALL, cellar.id(), model, 1);
        }
    }

    private void add(String serial, Long model, StoreRoom room, String note) {
        spares.add(ALL, new SpareDraft(serial, model, room.id(), null, note));
    }

    /** A unit that failed was sent in, and another one stands in its place. */
    private void replaced(DemoSown sown, DemoDevice device) {
        Instant first = sown.first();
        Device place = device(sown, device);
        List<Unit> units = past.stood(
                place.id,
                List.of(
                        new PastClaims.Stood(device.serial() + "-OLD", days(first, 80)),
                        new PastClaims.Stood(device.serial(), days(first, 31))));
        if (units.isEmpty()) {
            return;
        }
        past.fate(units.get(0), Fate.SENT_BACK, days(first, 31));
        List<ClaimChange> changes = changes(
                new Step(ClaimState.OPENED, days(first, 33), ""),
                new Step(ClaimState.SENT, days(first, 31), "Parcel handed over"),
                new Step(ClaimState.REPLACED, days(first, 12), "They sent a new one to the workshop"));
        past.add(
                claim(place, units.get(0), changes, "Restarts several times an hour", Optional.of(units.get(1))),
                changes);
    }

    /** A unit that fails is with the maker's people. */
    private void sent(DemoSown sown, DemoDevice device) {
        Instant first = sown.first();
        Device place = device(sown, device);
        List<Unit> units = past.stood(place.id, List.of(new PastClaims.Stood(device.serial(), days(first, 90))));
        if (units.isEmpty()) {
            return;
        }
        List<ClaimChange> changes = changes(
                new Step(ClaimState.OPENED, days(first, 6), ""),
                new Step(ClaimState.SENT, days(first, 4), "Advance replacement asked for"));
        past.add(
                claim(place, units.get(0), changes, "One radio goes off the air by itself", Optional.empty()), changes);
    }

    private Device device(DemoSown sown, DemoDevice device) {
        return devices.find(ALL, sown.ids().get(device.number())).orElseThrow();
    }

    private static Instant days(Instant first, int before) {
        return first.minus(Duration.ofDays(before));
    }

    /** A state that a claim came to. */
    private record Step(ClaimState to, Instant at, String note) {}

    private static List<ClaimChange> changes(Step... steps) {
        List<ClaimChange> all = new ArrayList<>();
        Optional<ClaimState> before = Optional.empty();
        for (Step step : steps) {
            all.add(new ClaimChange(0, step.at(), WHO, before, step.to(), step.note()));
            before = Optional.of(step.to());
        }
        return all;
    }

    private Claim claim(Device place, Unit unit, List<ClaimChange> changes, String fault, Optional<Unit> fresh) {
        ClaimChange opened = changes.get(0);
        ClaimChange last = changes.get(changes.size() - 1);
        LocalDate shipped = changes.get(1).at().atZone(ZoneOffset.UTC).toLocalDate();
        ZoneId zone = place.site.zone();
        Cover cover = past.cover(place.id, unit);
        return new Claim(
                0,
                place.site.customer.id,
                place.site.customer.name,
                unit.id(),
                OptionalLong.of(place.site.id),
                OptionalLong.of(place.id),
                OptionalLong.empty(),
                last.to(),
                opened.at(),
                WHO,
                last.at(),
                new Claim.Known(
                        unit.serial(),
                        unit.model().isEmpty() ? "not known" : unit.model(),
                        place.name + ", " + place.place + ", " + place.site.name,
                        zone,
                        fault,
                        cover.terms(),
                        cover.status(),
                        cover.derivation(),
                        cover.evidence(),
                        List.of(DemoFleet.NOTE + ": what the readings said is not kept of this time.")),
                new Claim.Papers(MAKER, "R-" + unit.id(), Optional.of(shipped), "Parcel 00340-" + unit.id()),
                fresh.map(one -> OptionalLong.of(one.id())).orElse(OptionalLong.empty()),
                "");
    }
}
