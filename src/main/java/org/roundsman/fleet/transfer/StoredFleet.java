package org.roundsman.fleet.transfer;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.CustomerDraft;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.fleet.SiteContact;
import org.roundsman.fleet.SiteDraft;

/**
 * Reads the fleet row by row, of one customer or (null) of all, in the order of names. Rows come through a cursor where the
 * connection is in a transaction, so that any size fits.
 */
final class StoredFleet {

    private static final int ROWS_AT_ONCE = 1000;

    private final Connection connection;
    private final Long only;

    StoredFleet(Connection connection, Long only) {
        this.connection = connection;
        this.only = only;
    }

    /** Takes one row after the other. */
    @FunctionalInterface
    interface Taker<R> {
        void take(R row) throws SQLException;
    }

    /**
     * One row.
     *
     * @param ownerId a site's or purchase's customer, a device's site; 0 for a customer
     * @param key its name or serial number as the database folds it to compare
     */
    record Stored<D>(long id, long ownerId, String key, String customer, String site, String device, D draft) {}

    @FunctionalInterface
    private interface Reading<R> {
        R of(ResultSet row) throws SQLException;
    }

    private <R> void each(String sql, Reading<R> reading, Taker<R> taker) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setFetchSize(ROWS_AT_ONCE);
            statement.setObject(1, only, java.sql.Types.BIGINT);
            statement.setObject(2, only, java.sql.Types.BIGINT);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    taker.take(reading.of(row));
                }
            }
        }
    }

    void customers(Taker<Stored<CustomerDraft>> taker) throws SQLException {
        each(
                "select c.id, c.name, c.note, lower(c.name) as key from customer c"
                        + " where (?::bigint is null or c.id = ?) order by lower(c.name)",
                row -> new Stored<>(
                        row.getLong("id"),
                        0,
                        row.getString("key"),
                        row.getString("name"),
                        "",
                        "",
                        new CustomerDraft(row.getString("name"), row.getString("note"))),
                taker);
    }

    void sites(Taker<Stored<SiteDraft>> taker) throws SQLException {
        Map<Long, List<ServiceHours>> hours = hours();
        Map<Long, List<SiteContact>> contacts = contacts();
        each(
                "select s.*, lower(s.name) as key, c.name as customer from site s join customer c on c.id ="
                        + " s.customer_id where (?::bigint is null or c.id = ?) order by lower(c.name), lower(s.name)",
                row -> {
                    long id = row.getLong("id");
                    SiteDraft draft =
                            site(row, hours.getOrDefault(id, List.of()), contacts.getOrDefault(id, List.of()));
                    return new Stored<>(
                            id,
                            row.getLong("customer_id"),
                            row.getString("key"),
                            row.getString("customer"),
                            draft.name(),
                            "",
                            draft);
                },
                taker);
    }

    private static SiteDraft site(ResultSet row, List<ServiceHours> hours, List<SiteContact> contacts)
            throws SQLException {
        return new SiteDraft(
                row.getString("name"),
                row.getString("time_zone"),
                row.getString("street"),
                row.getString("postcode"),
                row.getString("town"),
                row.getString("country"),
                row.getString("access_note"),
                row.getObject("uplink_down_kbit", Integer.class),
                row.getObject("uplink_up_kbit", Integer.class),
                hours,
                contacts);
    }

    private Map<Long, List<ServiceHours>> hours() throws SQLException {
        Map<Long, List<ServiceHours>> hours = new HashMap<>();
        record Of(long site, ServiceHours hours) {}
        each(
                "select h.* from site_hours h join site s on s.id = h.site_id"
                        + " where (?::bigint is null or s.customer_id = ?) order by h.weekday, h.opens",
                row -> new Of(
                        row.getLong("site_id"),
                        new ServiceHours(
                                row.getInt("weekday"),
                                row.getObject("opens", LocalTime.class),
                                row.getObject("closes", LocalTime.class))),
                of -> hours.computeIfAbsent(of.site(), id -> new ArrayList<>()).add(of.hours()));
        return hours;
    }

    private Map<Long, List<SiteContact>> contacts() throws SQLException {
        Map<Long, List<SiteContact>> contacts = new HashMap<>();
        record Of(long site, SiteContact contact) {}
        each(
                "select k.* from site_contact k join site s on s.id = k.site_id"
                        + " where (?::bigint is null or s.customer_id = ?) order by k.name, k.id",
                row -> new Of(
                        row.getLong("site_id"),
                        new SiteContact(
                                row.getString("name"),
                                row.getString("duty"),
                                row.getString("phone"),
                                row.getString("email"))),
                of -> contacts.computeIfAbsent(of.site(), id -> new ArrayList<>())
                        .add(of.contact()));
        return contacts;
    }

    void devices(Taker<Stored<DeviceDraft>> taker) throws SQLException {
        each(
                "select d.*, lower(d.name) as key, s.name as site, c.name as customer from device d"
                        + " join site s on s.id = d.site_id join customer c on c.id = s.customer_id"
                        + " where (?::bigint is null or c.id = ?)"
                        + " order by lower(c.name), lower(s.name), d.kind, lower(d.name)",
                row -> new Stored<>(
                        row.getLong("id"),
                        row.getLong("site_id"),
                        row.getString("key"),
                        row.getString("customer"),
                        row.getString("site"),
                        row.getString("name"),
                        device(row)),
                taker);
    }

    private static DeviceDraft device(ResultSet row) throws SQLException {
        return new DeviceDraft(
                row.getString("name"),
                DeviceKind.valueOf(row.getString("kind")),
                row.getString("host"),
                row.getInt("port"),
                row.getLong("credential_id"),
                row.getObject("model_id", Long.class),
                row.getString("place"),
                row.getInt("interval_s"),
                row.getBoolean("paused"));
    }

    void purchases(Taker<Stored<PurchaseDraft>> taker) throws SQLException {
        each(
                "select p.*, lower(p.serial) as key, c.name as customer, coalesce(s.name, '') as site,"
                        + " coalesce(d.name, '') as device from purchase p join customer c on c.id = p.customer_id"
                        + " left join site s on s.id = p.site_id left join device d on d.id = p.device_id"
                        + " where (?::bigint is null or c.id = ?) order by lower(c.name), lower(p.serial)",
                row -> new Stored<>(
                        row.getLong("id"),
                        row.getLong("customer_id"),
                        row.getString("key"),
                        row.getString("customer"),
                        row.getString("site"),
                        row.getString("device"),
                        purchase(row)),
                taker);
    }

    private static PurchaseDraft purchase(ResultSet row) throws SQLException {
        return new PurchaseDraft(
                row.getString("serial"),
                row.getObject("site_id", Long.class),
                row.getObject("device_id", Long.class),
                row.getString("supplier"),
                row.getString("order_number"),
                row.getString("invoice_number"),
                row.getObject("bought_on", LocalDate.class),
                row.getObject("delivered_on", LocalDate.class),
                row.getObject("installed_on", LocalDate.class),
                row.getBigDecimal("price"),
                row.getString("currency"),
                row.getString("note"));
    }

    /**
     * Models: all of them, or those of the one customer's devices. In the place of the customer stands the maker, folded to
     * compare.
     */
    void models(Taker<Stored<ModelDraft>> taker) throws SQLException {
        each(
                "select m.*, lower(m.maker) as maker_key, lower(m.name) as key from model m where ?::bigint is null"
                        + " or exists (select from device d join site s on s.id = d.site_id where d.model_id = m.id"
                        + " and s.customer_id = ?) order by lower(m.maker), lower(m.name), m.id",
                row -> new Stored<>(
                        row.getLong("id"),
                        0,
                        row.getString("key"),
                        row.getString("maker_key"),
                        "",
                        "",
                        ModelRow.read(row)),
                taker);
    }

    /** Names of credentials, models and firmware lines; a customer's own credentials only where one customer is asked for. */
    KnownNames names() throws SQLException {
        KnownNames known = new KnownNames();
        each(
                "select id, customer_id, site_id, name from credential c"
                        + " where (?::bigint is null or c.customer_id is null or c.customer_id = ?)",
                row -> new KnownNames.Credential(
                        row.getLong("id"),
                        row.getObject("customer_id", Long.class),
                        row.getObject("site_id", Long.class),
                        row.getString("name")),
                known::add);
        each(
                "select id, maker, name from model m where ?::bigint is null or ?::bigint is not null",
                row -> Map.entry(
                        row.getLong("id"), new KnownNames.Model(row.getString("maker"), row.getString("name"))),
                model -> known.add(model.getKey(), model.getValue()));
        each(
                "select id, name from firmware_line l where ?::bigint is null or ?::bigint is not null order by id",
                row -> Map.entry(row.getLong("id"), row.getString("name")),
                line -> known.addLine(line.getKey(), line.getValue()));
        return known;
    }
}
