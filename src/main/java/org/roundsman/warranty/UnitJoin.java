package org.roundsman.warranty;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.roundsman.warranty.store.ContractTable.Key;

/**
 * Finds the purchase of each device: the one of the serial number that the device tells; where it tells none, the latest
 * that names the device. A purchase that names a device which tells another serial number is not its purchase, nor is that of
 * a unit which left for good, where the device tells nothing.
 */
final class UnitJoin {

    private final Map<Key, Purchase> bySerial = new HashMap<>();
    private final Map<Long, Purchase> byDevice = new HashMap<>();
    private final Set<Long> used = new HashSet<>();
    private final List<Purchase> purchases;
    private final Map<Long, UnitModel> models;
    private final Map<Key, KnownUnit> known;

    /**
     * @param purchases by id
     * @param known of these units, and of those of the devices that are asked for later
     */
    UnitJoin(List<Purchase> purchases, Map<Long, UnitModel> models, Map<Key, KnownUnit> known) {
        this.purchases = purchases;
        this.models = models;
        this.known = known;
        for (Purchase purchase : purchases) {
            bySerial.put(Key.of(purchase.customerId(), purchase.serial()), purchase);
            purchase.deviceId().ifPresent(device -> byDevice.merge(device, purchase, this::standing));
        }
    }

    /** Of two purchases that name a device, the later whose unit did not leave for good. */
    private Purchase standing(Purchase earlier, Purchase later) {
        return known(later).gone() && !known(earlier).gone() ? earlier : later;
    }

    /** Devices with their purchases. */
    List<Unit> devices(List<Unit> devices) {
        return devices.stream().map(this::device).toList();
    }

    /** Purchases that stand at none of the devices asked for before, those of units that left for good too. */
    List<Unit> others() {
        List<Unit> others = new ArrayList<>();
        purchases.stream().filter(one -> !used.contains(one.id())).forEach(one -> others.add(other(one)));
        return others;
    }

    private Unit device(Unit bare) {
        Purchase named = byDevice.get(bare.deviceId().orElseThrow());
        boolean tells = !bare.serial().isEmpty();
        Optional<Purchase> own = tells
                ? Optional.ofNullable(bySerial.get(Key.of(bare.customerId(), bare.serial())))
                : Optional.ofNullable(named).filter(one -> !known(one).gone());
        own.ifPresent(purchase -> used.add(purchase.id()));
        Optional<Purchase> stranger = tells && own.isEmpty() ? Optional.ofNullable(named) : Optional.empty();
        String serial = tells ? bare.serial() : own.map(Purchase::serial).orElse("");
        return new Unit(
                bare.deviceId(),
                bare.kind(),
                bare.customerId(),
                bare.customer(),
                bare.siteId(),
                bare.site(),
                bare.zone(),
                bare.name(),
                bare.place(),
                serial,
                bare.model().or(() -> own.flatMap(this::model)),
                firstSeen(bare, serial),
                own,
                stranger,
                Optional.empty());
    }

    /** Since it was read anywhere: a unit that is moved to another place does not begin again. */
    private Optional<LocalDate> firstSeen(Unit bare, String serial) {
        return known(bare.customerId(), serial)
                .firstRead()
                .map(at -> at.atZone(bare.zone()).toLocalDate())
                .or(bare::firstSeen);
    }

    private Unit other(Purchase one) {
        KnownUnit unit = known(one);
        return new Unit(
                OptionalLong.empty(),
                Optional.empty(),
                one.customerId(),
                one.customer(),
                one.siteId(),
                one.site(),
                one.zone(),
                "",
                "",
                one.serial(),
                model(one),
                unit.firstRead().map(at -> day(at, one)),
                Optional.of(one),
                Optional.empty(),
                unit.fateSince().map(at -> new UnitFate(unit.fate(), day(at, one))));
    }

    private static LocalDate day(Instant at, Purchase one) {
        return at.atZone(one.zone()).toLocalDate();
    }

    private Optional<UnitModel> model(Purchase one) {
        OptionalLong entered = one.modelId();
        OptionalLong id = entered.isPresent() ? entered : known(one).modelId();
        return id.isPresent() ? Optional.ofNullable(models.get(id.getAsLong())) : Optional.empty();
    }

    private KnownUnit known(Purchase one) {
        return known(one.customerId(), one.serial());
    }

    private KnownUnit known(long customerId, String serial) {
        return known.getOrDefault(Key.of(customerId, serial), KnownUnit.NOTHING);
    }
}
