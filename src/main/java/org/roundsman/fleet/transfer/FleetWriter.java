package org.roundsman.fleet.transfer;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.Stream;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.fleet.SiteDraft;

/** Writes what an evaluation found new or changed, in the transaction of its connection. */
final class FleetWriter {

    private static final int ROWS_AT_ONCE = 1000;

    private final Connection connection;
    private final IntConsumer progress;
    private int done;

    /**
     * @param progress takes the number of rows written so far
     */
    FleetWriter(Connection connection, IntConsumer progress) {
        this.connection = connection;
        this.progress = progress;
    }

    @FunctionalInterface
    private interface Filling<D> {
        void fill(PreparedStatement statement, Entry<D> entry) throws SQLException;
    }

    void write(Evaluation evaluation) throws SQLException {
        customers(evaluation.customers());
        sites(evaluation.sites());
        models(evaluation.models());
        devices(evaluation.devices(), evaluation.known());
        purchases(evaluation.purchases());
    }

    private void customers(List<Entry<CustomerDraft>> customers) throws SQLException {
        Filling<CustomerDraft> filling = (statement, entry) -> {
            statement.setString(1, entry.wanted().name());
            statement.setString(2, entry.wanted().note());
            statement.setLong(3, entry.id());
        };
        number("customer", fresh(customers));
        batch(
                "insert into customer (name, note, id) overriding system value values (?, ?, ?)",
                fresh(customers),
                filling);
        batch("update customer set name = ?, note = ? where id = ?", changed(customers), filling);
    }

    private void sites(List<Entry<SiteDraft>> sites) throws SQLException {
        Filling<SiteDraft> filling = (statement, entry) -> {
            SiteDraft draft = entry.wanted();
            statement.setLong(1, entry.owner().id());
            statement.setString(2, draft.name());
            statement.setString(3, draft.timeZone());
            statement.setString(4, draft.street());
            statement.setString(5, draft.postcode());
            statement.setString(6, draft.town());
            statement.setString(7, draft.country());
            statement.setString(8, draft.accessNote());
            statement.setObject(9, draft.uplinkDownKbit(), Types.INTEGER);
            statement.setObject(10, draft.uplinkUpKbit(), Types.INTEGER);
            statement.setLong(11, entry.id());
        };
        String columns = "customer_id, name, time_zone, street, postcode, town, country, access_note, uplink_down_kbit,"
                + " uplink_up_kbit";
        number("site", fresh(sites));
        batch(
                "insert into site (" + columns
                        + ", id) overriding system value values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                fresh(sites),
                filling);
        batch(
                "update site set (" + columns + ") = (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) where id = ?",
                changed(sites),
                filling);
        hoursAndContacts(
                Stream.concat(fresh(sites).stream(), changed(sites).stream()).toList());
    }

    private void hoursAndContacts(List<Entry<SiteDraft>> sites) throws SQLException {
        for (String table : List.of("site_hours", "site_contact")) {
            batch(
                    "delete from " + table + " where site_id = ?",
                    sites,
                    (statement, site) -> statement.setLong(1, site.id()));
        }
        try (PreparedStatement hours = connection.prepareStatement(
                        "insert into site_hours (site_id, weekday, opens, closes) values (?, ?, ?, ?)");
                PreparedStatement contacts = connection.prepareStatement(
                        "insert into site_contact (site_id, name, duty, phone, email) values (?, ?, ?, ?, ?)")) {
            for (Entry<SiteDraft> site : sites) {
                for (var stretch : site.wanted().hours()) {
                    add(hours, site.id(), stretch.weekday, stretch.opens, stretch.closes);
                }
                for (var contact : site.wanted().contacts()) {
                    add(contacts, site.id(), contact.name, contact.duty, contact.phone, contact.email);
                }
            }
            hours.executeBatch();
            contacts.executeBatch();
        }
    }

    private static void add(PreparedStatement statement, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
        statement.addBatch();
    }

    private void models(List<Entry<ModelDraft>> models) throws SQLException {
        Filling<ModelDraft> filling = (statement, entry) -> {
            int next = ModelRow.fill(statement, entry.wanted());
            statement.setLong(next, entry.id());
        };
        String values = ModelRow.COLUMNS.replaceAll("[a-z_]+", "?");
        number("model", fresh(models));
        // Models may swap what they answer with.
        batch(
                "update model set object_id = null where id = ? -- on the move",
                changed(models),
                (statement, model) -> statement.setLong(1, model.id()));
        batch(
                "insert into model (" + ModelRow.COLUMNS + ", id) overriding system value values (" + values + ", ?)",
                fresh(models),
                filling);
        batch("update model set (" + ModelRow.COLUMNS + ") = (" + values + ") where id = ?", changed(models), filling);
    }

    private void devices(List<Entry<DeviceDraft>> devices, KnownNames known) throws SQLException {
        Filling<DeviceDraft> filling = (statement, entry) -> {
            DeviceDraft draft = entry.wanted();
            statement.setLong(1, entry.owner().id());
            statement.setString(2, draft.kind().name());
            statement.setString(3, draft.name());
            statement.setString(4, draft.host());
            statement.setInt(5, draft.port());
            statement.setLong(6, draft.credentialId());
            statement.setObject(7, known.written(draft.modelId()), Types.BIGINT);
            statement.setString(8, draft.place());
            statement.setInt(9, draft.intervalSeconds());
            statement.setBoolean(10, draft.paused());
            statement.setLong(11, entry.id());
        };
        String columns = "site_id, kind, name, host, port, credential_id, model_id, place, interval_s, paused";
        number("device", fresh(devices));
        // Devices may swap names or addresses: out of each other's way first, since unique indexes are checked row by
        // row.
        batch(
                "update device set name = 'on the move ' || id, host = 'on-the-move-' || id where id = ?",
                changed(devices).stream().filter(FleetWriter::moves).toList(),
                (statement, device) -> statement.setLong(1, device.id()));
        batch(
                "insert into device (" + columns + ", id) overriding system value"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                fresh(devices),
                filling);
        batch(
                "update device set (" + columns + ") = (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) where id = ?",
                changed(devices),
                filling);
    }

    private static boolean moves(Entry<DeviceDraft> device) {
        DeviceDraft before = device.stored();
        DeviceDraft after = device.wanted();
        return !before.name().equals(after.name())
                || !before.host().equals(after.host())
                || before.port() != after.port();
    }

    private void purchases(List<Entry<Bought>> purchases) throws SQLException {
        Filling<Bought> filling = (statement, entry) -> {
            Bought bought = entry.wanted();
            PurchaseDraft draft = bought.draft();
            statement.setLong(1, entry.owner().id());
            statement.setString(2, draft.serial());
            statement.setObject(3, bought.site() == null ? null : bought.site().id(), Types.BIGINT);
            statement.setObject(
                    4, bought.device() == null ? null : bought.device().id(), Types.BIGINT);
            statement.setString(5, draft.supplier());
            statement.setString(6, draft.orderNumber());
            statement.setString(7, draft.invoiceNumber());
            statement.setObject(8, draft.boughtOn(), Types.DATE);
            statement.setObject(9, draft.deliveredOn(), Types.DATE);
            statement.setObject(10, draft.installedOn(), Types.DATE);
            statement.setBigDecimal(11, draft.price());
            statement.setString(12, draft.currency());
            statement.setString(13, draft.note());
            statement.setLong(14, entry.id());
        };
        String columns = "customer_id, serial, site_id, device_id, supplier, order_number, invoice_number, bought_on,"
                + " delivered_on, installed_on, price, currency, note";
        String values = "(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?";
        number("purchase", fresh(purchases));
        batch(
                "insert into purchase (" + columns + ", id) overriding system value values " + values + ", ?)",
                fresh(purchases),
                filling);
        batch("update purchase set (" + columns + ") = " + values + ") where id = ?", changed(purchases), filling);
    }

    private static <D> List<Entry<D>> fresh(List<Entry<D>> entries) {
        return with(ImportOutcome.NEW, entries);
    }

    private static <D> List<Entry<D>> changed(List<Entry<D>> entries) {
        return with(ImportOutcome.CHANGED, entries);
    }

    private static <D> List<Entry<D>> with(ImportOutcome outcome, List<Entry<D>> entries) {
        return entries.stream().filter(e -> e.line().outcome() == outcome).toList();
    }

    /** Draws ids for what is new, so that rows below it can name them and all go in batches. */
    private <D> void number(String table, List<Entry<D>> entries) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "select nextval(pg_get_serial_sequence(?, 'id')) from generate_series(1, ?)")) {
            statement.setString(1, table);
            statement.setInt(2, entries.size());
            try (ResultSet row = statement.executeQuery()) {
                for (Entry<D> entry : entries) {
                    row.next();
                    entry.written(row.getLong(1));
                }
            }
        }
    }

    private <D> void batch(String sql, List<Entry<D>> entries, Filling<D> filling) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < entries.size(); i++) {
                filling.fill(statement, entries.get(i));
                statement.addBatch();
                if ((i + 1) % ROWS_AT_ONCE == 0 || i + 1 == entries.size()) {
                    statement.executeBatch();
                }
            }
        }
        if (!sql.startsWith("delete") && !sql.contains("on the move")) {
            done += entries.size();
            progress.accept(done);
        }
    }
}
