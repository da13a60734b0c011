package org.roundsman.fleet.transfer;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.fleet.SiteDraft;

/**
 * The fleet in memory, as far as a scope reaches, by the names that rows match by. Names are folded by the database itself,
 * since its unique indexes compare so.
 */
final class Picture {

    private static final int NAMES_AT_ONCE = 5000;

    private final Map<String, Entry<CustomerDraft>> customers = new HashMap<>();
    private final Map<Key, Entry<SiteDraft>> sites = new HashMap<>();
    private final Map<Key, Entry<DeviceDraft>> devices = new HashMap<>();
    private final Map<Address, Entry<DeviceDraft>> addresses = new HashMap<>();
    private final Map<Key, Entry<Bought>> purchases = new HashMap<>();
    private final Map<String, String> folded = new HashMap<>();
    private final Map<Maker, Entry<ModelDraft>> models = new HashMap<>();
    private KnownNames known;

    /** A name within its owner. */
    record Key(Entry<?> owner, String name) {}

    /** A model's maker and name, both folded. */
    private record Maker(String maker, String name) {}

    /** Where a device is polled. */
    record Address(Entry<?> site, String host, int port) {}

    /** Loads what the scope reaches, and folds the names that the rows hold. */
    static Picture load(Connection connection, CustomerScope scope, Collection<Line> lines) throws SQLException {
        Picture picture = new Picture();
        picture.load(new StoredFleet(connection, scope.onlyCustomer()));
        picture.fold(
                connection,
                lines.stream()
                        .flatMap(line -> Stream.of("customer", "site", "device", "serial", "maker", "model")
                                .map(line::at))
                        .distinct()
                        .toList());
        return picture;
    }

    private void load(StoredFleet stored) throws SQLException {
        known = stored.names();
        stored.models(row ->
                models.putIfAbsent(new Maker(row.customer(), row.key()), new Entry<>(row.id(), null, row.draft())));
        Map<Long, Entry<CustomerDraft>> customersById = new HashMap<>();
        stored.customers(row -> {
            Entry<CustomerDraft> customer = new Entry<>(row.id(), null, row.draft());
            customersById.put(row.id(), customer);
            customers.put(row.key(), customer);
        });
        Map<Long, Entry<SiteDraft>> sitesById = new HashMap<>();
        stored.sites(row -> {
            Entry<SiteDraft> site = new Entry<>(row.id(), customersById.get(row.ownerId()), row.draft());
            sitesById.put(row.id(), site);
            sites.put(new Key(site.owner(), row.key()), site);
        });
        Map<Long, Entry<DeviceDraft>> devicesById = new HashMap<>();
        stored.devices(row -> {
            Entry<DeviceDraft> device = new Entry<>(row.id(), sitesById.get(row.ownerId()), row.draft());
            devicesById.put(row.id(), device);
            devices.put(new Key(device.owner(), row.key()), device);
            addresses.put(address(device), device);
        });
        stored.purchases(row -> {
            PurchaseDraft draft = row.draft();
            Bought bought = new Bought(
                    draft,
                    draft.siteId() == null ? null : sitesById.get(draft.siteId()),
                    draft.deviceId() == null ? null : devicesById.get(draft.deviceId()));
            Entry<Bought> purchase = new Entry<>(row.id(), customersById.get(row.ownerId()), bought);
            purchases.put(new Key(purchase.owner(), row.key()), purchase);
        });
    }

    private static Address address(Entry<DeviceDraft> device) {
        return new Address(
                device.owner(), device.stored().host(), device.stored().port());
    }

    private void fold(Connection connection, List<String> names) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("select n, lower(n) from unnest(?::text[]) as n")) {
            for (int from = 0; from < names.size(); from += NAMES_AT_ONCE) {
                List<String> some = names.subList(from, Math.min(names.size(), from + NAMES_AT_ONCE));
                statement.setArray(1, connection.createArrayOf("text", some.toArray()));
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        folded.put(row.getString(1), row.getString(2));
                    }
                }
            }
        }
    }

    KnownNames known() {
        return known;
    }

    Entry<CustomerDraft> customer(String name) {
        return customers.get(folded.get(name));
    }

    void add(String name, Entry<CustomerDraft> customer) {
        customers.put(folded.get(name), customer);
    }

    Entry<ModelDraft> model(String maker, String name) {
        return models.get(new Maker(folded.get(maker), folded.get(name)));
    }

    void addModel(String maker, String name, Entry<ModelDraft> model) {
        models.put(new Maker(folded.get(maker), folded.get(name)), model);
    }

    /** Models that are stored or that rows add. */
    Collection<Entry<ModelDraft>> models() {
        return models.values();
    }

    Entry<SiteDraft> site(Entry<?> customer, String name) {
        return sites.get(new Key(customer, folded.get(name)));
    }

    void addSite(String name, Entry<SiteDraft> site) {
        sites.put(new Key(site.owner(), folded.get(name)), site);
    }

    Entry<DeviceDraft> device(Entry<?> site, String name) {
        return devices.get(new Key(site, folded.get(name)));
    }

    void addDevice(String name, Entry<DeviceDraft> device) {
        devices.put(new Key(device.owner(), folded.get(name)), device);
    }

    /** The device that is polled there as the fleet is stored. */
    Entry<DeviceDraft> deviceAt(Entry<?> site, String host, int port) {
        return addresses.get(new Address(site, host, port));
    }

    Entry<Bought> purchase(Entry<?> customer, String serial) {
        return purchases.get(new Key(customer, folded.get(serial)));
    }

    void addPurchase(String serial, Entry<Bought> purchase) {
        purchases.put(new Key(purchase.owner(), folded.get(serial)), purchase);
    }

    /** The name as the database compares it; of a stored name too. */
    String folded(String name) {
        return folded.get(name);
    }

    /** Devices that are stored, whether a row is about them or not. */
    List<Entry<DeviceDraft>> storedDevices() {
        return new ArrayList<>(addresses.values());
    }
}
