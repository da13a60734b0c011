package org.roundsman.warranty;

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
 * that names the device. A purchase that names a device which tells another serial number is not its purchase.
 */
final class UnitJoin {

    private final Map<Key, Purchase> bySerial = new HashMap<>();
    private final Map<Long, Purchase> byDevice = new HashMap<>();
    private final Set<Long> used = new HashSet<>();
    private final List<Purchase> purchases;
    private final Map<Long, UnitModel> models;

    /**
     * @param purchases by id
     */
    UnitJoin(List<Purchase> purchases, Map<Long, UnitModel> models) {
        this.purchases = purchases;
        this.models = models;
        for (Purchase purchase : purchases) {
            bySerial.put(Key.of(purchase.customerId(), purchase.serial()), purchase);
            purchase.deviceId().ifPresent(device -> byDevice.put(device, purchase));
        }
    }

    /** Devices with their purchases. */
    List<Unit> devices(List<Unit> devices) {
        return devices.stream().map(this::device).toList();
    }

    /** Purchases that stand at none of the devices asked for before. */
    List<Unit> others() {
        List<Unit> others = new ArrayList<>();
        purchases.stream().filter(one -> !used.contains(one.id())).forEach(one -> others.add(other(one)));
        return others;
    }

    private Unit device(Unit bare) {
        Purchase named = byDevice.get(bare.deviceId().orElseThrow());
        boolean tells = !bare.serial().isEmpty();
        Optional<Purchase> own =
                Optional.ofNullable(tells ? bySerial.get(Key.of(bare.customerId(), bare.serial())) : named);
        own.ifPresent(purchase -> used.add(purchase.id()));
        Optional<Purchase> stranger = tells && own.isEmpty() ? Optional.ofNullable(named) : Optional.empty();
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
                tells ? bare.serial() : own.map(Purchase::serial).orElse(""),
                bare.model().or(() -> own.flatMap(this::model)),
                bare.firstSeen(),
                own,
                stranger);
    }

    private Unit other(Purchase one) {
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
                Optional.empty(),
                Optional.of(one),
                Optional.empty());
    }

    private Optional<UnitModel> model(Purchase one) {
        return one.modelId().isPresent()
                ? Optional.ofNullable(models.get(one.modelId().getAsLong()))
                : Optional.empty();
    }
}
