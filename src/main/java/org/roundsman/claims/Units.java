package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.roundsman.claims.store.ClaimTable;
import org.roundsman.claims.store.PurchaseTable;
import org.roundsman.claims.store.SpareTable;
import org.roundsman.claims.store.StayTable;
import org.roundsman.claims.store.UnitTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;

/** Answers which unit is and was where, and what a unit went through. */
@ApplicationScoped
@Transactional
public class Units {

    /** More stays of one unit or place than this are not read. */
    private static final int MOST = 50;

    private final Tables tables;
    private final Devices devices;
    private final Failures failures;
    private final Clock clock;

    @Inject
    Units(DataSource database, Devices devices, Failures failures, Clock clock) {
        this.tables = new Tables(
                new UnitTable(database),
                new StayTable(database),
                new SpareTable(database),
                new ClaimTable(database),
                new PurchaseTable(database));
        this.devices = devices;
        this.failures = failures;
        this.clock = clock;
    }

    private record Tables(
            UnitTable units, StayTable stays, SpareTable spares, ClaimTable claims, PurchaseTable purchases) {}

    /** Empty when there is none or it lies outside the scope: whoever sees one customer sees no unit of the firm's own. */
    public Optional<Unit> find(CustomerScope scope, long id) {
        return tables.units().find(id).filter(unit -> seen(scope, unit));
    }

    /** By its serial number, without regard to case. */
    public Optional<Unit> find(CustomerScope scope, long customerId, String serial) {
        return scope.includes(customerId)
                ? tables.units().find(OptionalLong.of(customerId), serial.strip())
                : Optional.empty();
    }

    private static boolean seen(CustomerScope scope, Unit unit) {
        return unit.owner().isPresent() ? scope.includes(unit.owner().getAsLong()) : scope.onlyCustomer() == null;
    }

    /** Which unit stands in a place now; empty when none is known, or the device lies outside the scope. */
    public Optional<Stay> at(CustomerScope scope, long deviceId) {
        return tables.stays().now(deviceId).filter(stay -> scope.includes(stay.customerId()));
    }

    /** Which units stood in a place, the latest first. */
    public List<Stay> past(CustomerScope scope, long deviceId) {
        return tables.stays().ofDevice(deviceId, MOST).stream()
                .filter(stay -> scope.includes(stay.customerId()))
                .toList();
    }

    /** A unit with all that it went through; empty when there is none or it lies outside the scope. */
    public Optional<UnitPast> whole(CustomerScope scope, long id) {
        return find(scope, id).map(unit -> whole(scope, unit));
    }

    private UnitPast whole(CustomerScope scope, Unit unit) {
        Instant now = clock.instant();
        List<UnitPast.Stood> stays = new ArrayList<>();
        for (Stay stay : tables.stays().ofUnit(unit.id(), MOST)) {
            if (scope.includes(stay.customerId())) {
                stays.add(new UnitPast.Stood(stay, read(scope, stay, now)));
            }
        }
        boolean everyone = scope.onlyCustomer() == null;
        return new UnitPast(
                unit,
                tables.spares().ofUnit(unit.id()).filter(one -> tables.spares()
                        .find(scope.onlyCustomer(), one.id())
                        .isPresent()),
                everyone ? tables.spares().past(unit.id()) : List.of(),
                stays,
                tables.claims().ofUnit(scope.onlyCustomer(), unit.id()),
                purchase(unit));
    }

    private Optional<UnitPast.Read> read(CustomerScope scope, Stay stay, Instant now) {
        Instant to = stay.until().orElse(now);
        return stay.deviceId().isPresent() && to.isAfter(stay.from())
                ? Optional.of(failures.read(scope, stay.deviceId().getAsLong(), stay.from(), to))
                : Optional.empty();
    }

    private String purchase(Unit unit) {
        return tables.purchases()
                .of(unit.owner(), unit.serial())
                .map(Units::words)
                .orElse("");
    }

    /** {@code Harbour Supply, order 4711, bought 2024-02-29}. */
    static String words(PurchaseTable.Bought bought) {
        return Stream.of(
                        bought.supplier(),
                        bought.order().isEmpty() ? "" : "order " + bought.order(),
                        bought.invoice().isEmpty() ? "" : "invoice " + bought.invoice(),
                        day("bought ", bought.boughtOn()),
                        day("delivered ", bought.deliveredOn()))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private static String day(String word, Optional<LocalDate> day) {
        return day.map(at -> word + at).orElse("");
    }

    /** What may be told of a place: name, place and site. */
    static String words(Device device) {
        return device.name + (device.place.isEmpty() ? "" : ", " + device.place) + ", " + device.site.name;
    }

    /** What the device is, for a form; empty when it lies outside the scope. */
    public Optional<Device> device(CustomerScope scope, long deviceId) {
        return devices.find(scope, deviceId);
    }
}
