package org.roundsman.warranty.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.system.Rows;
import org.roundsman.warranty.Purchase;

/** The table of purchases. */
public final class PurchaseTable {

    private static final String WHOLE = """
            select p.*, c.name as customer, coalesce(s.name, '') as site, coalesce(d.name, '') as device,
                coalesce(s.time_zone, ds.time_zone) as time_zone
            from purchase p
            join customer c on c.id = p.customer_id
            left join site s on s.id = p.site_id
            left join device d on d.id = p.device_id
            left join site ds on ds.id = d.site_id
            """;

    private static final String OF_DEVICES = """
             where p.id in (
                select n.id from purchase n where n.device_id = any(?)
                union
                select n.id from device v
                join site t on t.id = v.site_id
                join device_fact f on f.device_id = v.id and f.fact = 'SERIAL'
                join purchase n on n.customer_id = t.customer_id and lower(n.serial) = lower(f.value)
                where v.id = any(?))
             order by p.id
            """;

    private final Rows rows;

    public PurchaseTable(DataSource database) {
        this.rows = new Rows(database, "warranty");
    }

    /** Purchases of one customer, null for all, by id. */
    public List<Purchase> all(Long customerId) {
        return rows.list(
                WHOLE + " where ?::bigint is null or p.customer_id = ? order by p.id",
                PurchaseTable::purchase,
                customerId,
                customerId);
    }

    /** Those that name one of these devices, or a serial number that one of them tells; by id. */
    public List<Purchase> of(Collection<Long> deviceIds) {
        Long[] ids = Columns.ids(deviceIds);
        return rows.list(WHOLE + OF_DEVICES, PurchaseTable::purchase, ids, ids);
    }

    public Optional<Purchase> find(long id) {
        return rows.one(WHOLE + " where p.id = ?", PurchaseTable::purchase, id);
    }

    /** The same, and keeps others from changing it until the end of this thread's transaction. */
    public Optional<Purchase> hold(long id) {
        rows.list("select id from purchase where id = ? for update", row -> row.getLong(1), id);
        return find(id);
    }

    private static Purchase purchase(ResultSet row) throws SQLException {
        String zone = row.getString("time_zone");
        return new Purchase(
                row.getLong("id"),
                row.getLong("customer_id"),
                row.getString("customer"),
                row.getString("site"),
                row.getString("device"),
                zone == null ? ZoneOffset.UTC : ZoneId.of(zone),
                Rows.id(row, "model_id"),
                facts(row));
    }

    private static PurchaseDraft facts(ResultSet row) throws SQLException {
        String currency = row.getString("currency");
        return new PurchaseDraft(
                row.getString("serial"),
                Columns.idOrNull(row, "site_id"),
                Columns.idOrNull(row, "device_id"),
                row.getString("supplier"),
                row.getString("order_number"),
                row.getString("invoice_number"),
                Columns.day(row, "bought_on"),
                Columns.day(row, "delivered_on"),
                Columns.day(row, "installed_on"),
                PurchaseDraft.usual(row.getBigDecimal("price"), currency),
                currency,
                row.getString("note"));
    }

    /** Whether another purchase of the customer has that serial number; nobody else takes it until this transaction ends. */
    public boolean taken(long customerId, String serial, long but) {
        Columns.holdCustomer(rows, customerId);
        return rows.one(
                        "select 1 from purchase where customer_id = ? and lower(serial) = lower(?) and id <> ?",
                        row -> 1,
                        customerId,
                        serial,
                        but)
                .isPresent();
    }

    /** Whether the site is that customer's. */
    public boolean ownsSite(long customerId, long siteId) {
        return rows.one("select 1 from site where id = ? and customer_id = ?", row -> 1, siteId, customerId)
                .isPresent();
    }

    /** The site of a device of that customer. */
    public OptionalLong siteOf(long customerId, long deviceId) {
        return rows.one(
                        "select s.id from device d join site s on s.id = d.site_id where d.id = ? and s.customer_id = ?",
                        row -> row.getLong(1),
                        deviceId,
                        customerId)
                .map(OptionalLong::of)
                .orElse(OptionalLong.empty());
    }

    public Optional<String> customer(long id) {
        return rows.one("select name from customer where id = ?", row -> row.getString(1), id);
    }

    public boolean hasModel(long id) {
        return rows.one("select 1 from model where id = ?", row -> 1, id).isPresent();
    }

    /** Stores a new one; empty when another has taken the serial number meanwhile. */
    public OptionalLong add(long customerId, Long modelId, PurchaseDraft facts) {
        return rows.one(
                        "insert into purchase (customer_id, model_id, serial, site_id, device_id, supplier, order_number,"
                                + " invoice_number, bought_on, delivered_on, installed_on, price, currency, note)"
                                + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing"
                                + " returning id",
                        row -> row.getLong(1),
                        customerId,
                        modelId,
                        facts.serial(),
                        facts.siteId(),
                        facts.deviceId(),
                        facts.supplier(),
                        facts.orderNumber(),
                        facts.invoiceNumber(),
                        facts.boughtOn(),
                        facts.deliveredOn(),
                        facts.installedOn(),
                        facts.price(),
                        facts.currency(),
                        facts.note())
                .map(OptionalLong::of)
                .orElse(OptionalLong.empty());
    }

    public void change(long id, Long modelId, PurchaseDraft facts) {
        rows.run(
                "update purchase set model_id = ?, serial = ?, site_id = ?, device_id = ?, supplier = ?, order_number = ?,"
                        + " invoice_number = ?, bought_on = ?, delivered_on = ?, installed_on = ?, price = ?, currency = ?,"
                        + " note = ? where id = ?",
                modelId,
                facts.serial(),
                facts.siteId(),
                facts.deviceId(),
                facts.supplier(),
                facts.orderNumber(),
                facts.invoiceNumber(),
                facts.boughtOn(),
                facts.deliveredOn(),
                facts.installedOn(),
                facts.price(),
                facts.currency(),
                facts.note(),
                id);
    }
}
