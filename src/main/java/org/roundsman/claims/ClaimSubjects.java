package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.claims.Failures.Raised;
import org.roundsman.claims.store.StayTable;
import org.roundsman.claims.store.UnitTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;

/** Finds what a claim is about, and what is known of it. In the transaction of the caller. */
@ApplicationScoped
class ClaimSubjects {

    /** A unit that stood in more places than this is looked for in the latest of them. */
    private static final int MOST = 50;

    private final UnitTable units;
    private final StayTable stays;
    private final Stays entering;
    private final Devices devices;
    private final Failures failures;
    private final Covers covers;

    @Inject
    ClaimSubjects(DataSource database, Stays entering, Devices devices, Failures failures, Covers covers) {
        this.units = new UnitTable(database);
        this.stays = new StayTable(database);
        this.entering = entering;
        this.devices = devices;
        this.failures = failures;
        this.covers = covers;
    }

    /**
     * What a claim is about.
     *
     * @param scope of the one who asks
     * @param stay the one in which it failed, if it stood anywhere
     * @param device the place, where it is in the fleet
     */
    record About(CustomerScope scope, Unit unit, long customerId, Optional<Stay> stay, Optional<Device> device) {

        OptionalLong deviceId() {
            return device.map(one -> OptionalLong.of(one.id)).orElse(OptionalLong.empty());
        }

        OptionalLong siteId() {
            return device.map(one -> OptionalLong.of(one.site.id)).orElse(OptionalLong.empty());
        }
    }

    /**
     * Finds it.
     *
     * @param keep whether a unit that was not known until now is kept
     */
    About about(CustomerScope scope, ClaimDraft draft, boolean keep) {
        Optional<Raised> alarm = alarm(scope, draft);
        if (draft.unitId() != null) {
            return ofUnit(scope, draft.unitId(), alarm);
        }
        boolean same =
                draft.deviceId() == null || alarm.isEmpty() || alarm.get().deviceId() == draft.deviceId();
        new EntryCheck()
                .that("alarm", same, "this alarm is about another device")
                .done();
        Device device = alarm.map(Raised::deviceId)
                .or(() -> Optional.ofNullable(draft.deviceId()))
                .flatMap(one -> devices.find(scope, one))
                .orElseThrow(() -> EntryCheck.refused("device", "there is no such device"));
        long customer = device.site.customer.id;
        Optional<Stay> failed =
                alarm.flatMap(one -> stays.at(device.id, one.began())).or(() -> stays.now(device.id));
        if (failed.isPresent()) {
            Stay stay = arrived(failed.get(), device);
            requireSame(stay, draft.serial());
            Unit unit = units.find(stay.unitId()).orElseThrow();
            return new About(scope, unit, customer, Optional.of(stay), Optional.of(device));
        }
        new EntryCheck().text("serial", draft.serial(), keep ? 1 : 0, 120).done();
        Unit unit = keep ? entering.enter(device.id, draft.serial().strip(), device.createdAt) : unknown(device);
        return new About(scope, unit, customer, stays.now(device.id), Optional.of(device));
    }

    private Optional<Raised> alarm(CustomerScope scope, ClaimDraft draft) {
        return Optional.ofNullable(draft.alarmId()).map(id -> failures.raised(scope, id)
                .orElseThrow(() -> EntryCheck.refused("alarm", "there is no such alarm of a device")));
    }

    /** What fails is hardly the unit that is yet to come: until the device says it, the one before is meant. */
    private Stay arrived(Stay stay, Device device) {
        return stay.awaited()
                ? stays.ofDevice(device.id, 2).stream().skip(1).findFirst().orElse(stay)
                : stay;
    }

    private About ofUnit(CustomerScope scope, long id, Optional<Raised> alarm) {
        Unit unit = units.find(id)
                .filter(one ->
                        one.owner().isPresent() && scope.includes(one.owner().getAsLong()))
                .orElseThrow(() -> EntryCheck.refused("unit", "there is no such unit of a customer"));
        Optional<Stay> last = stays.ofUnit(id, MOST).stream()
                .filter(stay -> scope.includes(stay.customerId()))
                .filter(stay -> alarm.isEmpty() || isAt(stay, alarm.get().deviceId()))
                .findFirst();
        new EntryCheck()
                .that(
                        "alarm",
                        alarm.isEmpty() || last.isPresent(),
                        "this alarm is about no device where the unit stood")
                .done();
        Optional<Device> device = last.flatMap(stay -> stay.deviceId().isPresent()
                ? devices.find(scope, stay.deviceId().getAsLong())
                : Optional.empty());
        return new About(scope, unit, unit.owner().getAsLong(), last, device);
    }

    private static boolean isAt(Stay stay, long deviceId) {
        return stay.deviceId().isPresent() && stay.deviceId().getAsLong() == deviceId;
    }

    /** Somebody else may have said meanwhile which unit it is: then the claim would be about another one than was meant. */
    private static void requireSame(Stay stay, String serial) {
        new EntryCheck()
                .that(
                        "",
                        serial == null || serial.isBlank() || stay.isOf(serial),
                        "the unit in this place is known as serial number " + stay.serial()
                                + " by now; look at the unit again, or leave the serial number out")
                .done();
    }

    private static Unit unknown(Device device) {
        String name = device.model == null ? "" : device.model.maker + " " + device.model.name;
        return new Unit(
                0,
                OptionalLong.of(device.site.customer.id),
                device.site.customer.name,
                "",
                model(device),
                name,
                false,
                false,
                "",
                Optional.empty(),
                device.createdAt);
    }

    private static OptionalLong model(Device device) {
        return device.model == null ? OptionalLong.empty() : OptionalLong.of(device.model.id);
    }

    /** What stands in a claim for good. */
    Claim.Known known(About about, String fault, Instant now) {
        ZoneId zone = about.device().map(device -> device.site.zone()).orElse(ZoneOffset.UTC);
        Cover cover = covers.of(about.scope(), about.deviceId(), about.unit());
        String place = about.device()
                .map(Units::words)
                .or(() -> about.stay().map(stay -> stay.device() + ", " + stay.site()))
                .orElse("stood in no place that we know of");
        Unit unit = about.unit();
        return new Claim.Known(
                unit.serial(),
                unit.model().isEmpty() ? "not known" : unit.model(),
                place,
                zone,
                fault,
                cover.terms(),
                cover.status(),
                cover.derivation(),
                cover.evidence(),
                failure(about, zone, now));
    }

    private List<String> failure(About about, ZoneId zone, Instant now) {
        if (about.device().isEmpty()) {
            return List.of("It stands in no place of the fleet, so that there are no readings of it.");
        }
        return failures.lately(about.scope(), about.device().get().id, about.stay(), now)
                .sentences(zone);
    }
}
