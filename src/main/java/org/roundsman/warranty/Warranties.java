package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.warranty.store.ContractTable;
import org.roundsman.warranty.store.ContractTable.Key;
import org.roundsman.warranty.store.PurchaseTable;
import org.roundsman.warranty.store.UnitTable;

/**
 * Until when what is covered, worked out when it is asked, for the present day in the time zone of each unit's site. The
 * whole fleet costs five questions to the database, whatever its size. Thread-safe.
 */
@ApplicationScoped
public class Warranties {

    private final UnitTable units;
    private final PurchaseTable purchases;
    private final ContractTable contracts;
    private final Clock clock;

    @Inject
    public Warranties(DataSource database, Clock clock) {
        this.units = new UnitTable(database);
        this.purchases = new PurchaseTable(database);
        this.contracts = new ContractTable(database);
        this.clock = clock;
    }

    /** The cover of these devices, by device; those that are not there or lie outside the scope are left out. */
    public Map<Long, UnitCover> of(CustomerScope scope, Collection<Long> deviceIds) {
        if (deviceIds.isEmpty()) {
            return Map.of();
        }
        Map<Long, UnitModel> models = units.models();
        List<Unit> bare = units.devices(scope.onlyCustomer(), deviceIds, models);
        List<Purchase> bought = purchases.of(deviceIds);
        List<Unit> found = new UnitJoin(bought, models, known(scope, bare, bought)).devices(bare);
        Map<Long, UnitCover> covers = new HashMap<>();
        covered(scope, found).forEach(cover -> covers.put(cover.deviceId().orElseThrow(), cover));
        return covers;
    }

    private Map<Key, KnownUnit> known(CustomerScope scope, List<Unit> devices, List<Purchase> bought) {
        Set<String> serials = Stream.concat(
                        devices.stream().map(Unit::serial), bought.stream().map(Purchase::serial))
                .map(serial -> serial.strip().toLowerCase(Locale.ROOT))
                .collect(Collectors.toSet());
        return units.known(scope.onlyCustomer(), serials);
    }

    /** Empty when there is no such device or it lies outside the scope. */
    public Optional<UnitCover> ofDevice(CustomerScope scope, long deviceId) {
        return Optional.ofNullable(of(scope, List.of(deviceId)).get(deviceId));
    }

    /** The unit of a purchase, as a device where it stands at one; empty as above. */
    public Optional<UnitCover> ofPurchase(CustomerScope scope, long purchaseId) {
        Optional<Purchase> purchase = purchases.find(purchaseId).filter(one -> scope.includes(one.customerId()));
        if (purchase.isEmpty()) {
            return Optional.empty();
        }
        Optional<UnitCover> standing = of(scope, units.devicesOf(purchaseId)).values().stream()
                .filter(cover -> cover.purchaseId().orElse(0) == purchaseId)
                .findFirst();
        return standing.or(() -> {
            List<Purchase> one = List.of(purchase.get());
            UnitJoin join = new UnitJoin(one, units.models(), known(scope, List.of(), one));
            return covered(scope, join.others()).stream().findFirst();
        });
    }

    /**
     * Every unit in the scope: devices by customer, site and name, then purchases that stand at no device. Units that were sent
     * back or scrapped are left out: nobody renews or replaces them.
     */
    public List<UnitCover> all(CustomerScope scope) {
        Long only = scope.onlyCustomer();
        Map<Long, UnitModel> models = units.models();
        UnitJoin join = new UnitJoin(purchases.all(only), models, units.known(only, null));
        List<Unit> found = new ArrayList<>(join.devices(units.devices(only, null, models)));
        join.others().stream().filter(unit -> unit.fate().isEmpty()).forEach(found::add);
        return covered(scope, found);
    }

    /** The devices in the scope whose cover stands so. */
    public Set<Long> with(CustomerScope scope, Set<CoverStatus> statuses) {
        return all(scope).stream()
                .filter(cover -> statuses.contains(cover.status()))
                .flatMap(cover -> cover.deviceId().stream().boxed())
                .collect(Collectors.toSet());
    }

    private List<UnitCover> covered(CustomerScope scope, List<Unit> found) {
        Set<Long> customers = found.stream().map(Unit::customerId).collect(Collectors.toSet());
        Map<Key, List<Contract>> byUnit = contracts.byUnit(scope.onlyCustomer(), customers);
        Instant now = clock.instant();
        Map<ZoneId, LocalDate> days = new HashMap<>();
        return found.stream()
                .map(unit -> {
                    LocalDate today = days.computeIfAbsent(
                            unit.zone(), zone -> now.atZone(zone).toLocalDate());
                    List<Contract> own = byUnit.getOrDefault(Key.of(unit.customerId(), unit.serial()), List.of());
                    return new UnitCover(unit, CoverRules.of(unit, own, today), today);
                })
                .toList();
    }
}
