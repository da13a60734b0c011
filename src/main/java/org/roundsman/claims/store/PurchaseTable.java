package org.roundsman.claims.store;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.system.Rows;

/** Purchases, as far as they follow the unit that was bought. Works in the transaction of this thread. */
public final class PurchaseTable {

    private final Rows rows;

    public PurchaseTable(DataSource database) {
        this.rows = new Rows(database, "units, claims or spares");
    }

    /** What was bought with a unit; prices are left out. */
    public record Bought(
            long id,
            String serial,
            String supplier,
            String order,
            String invoice,
            Optional<LocalDate> boughtOn,
            Optional<LocalDate> deliveredOn) {}

    /** By the serial number, without regard to case; of the firm's own unit, from a customer where it stood. */
    public Optional<Bought> of(OptionalLong customer, String serial) {
        return rows.one(
                "select id, serial, supplier, order_number, invoice_number, bought_on, delivered_on from purchase"
                        + " where lower(serial) = lower(?) and (customer_id = ?::bigint or ?::bigint is null and"
                        + " customer_id in (select st.customer_id from unit_stay st join unit u on u.id = st.unit_id where"
                        + " u.customer_id is null and lower(u.serial) = lower(?))) order by bought_on desc nulls last, id"
                        + " desc limit 1",
                row -> new Bought(
                        row.getLong("id"),
                        row.getString("serial"),
                        row.getString("supplier"),
                        row.getString("order_number"),
                        row.getString("invoice_number"),
                        Rows.day(row, "bought_on"),
                        Rows.day(row, "delivered_on")),
                serial,
                customer,
                customer,
                serial);
    }

    /** Serial numbers whose purchase named the device though another unit stands there now; they name it no more. */
    public List<String> leave(long deviceId, String present) {
        return rows.list(
                "update purchase set device_id = null where device_id = ? and lower(serial) <> lower(?) returning"
                        + " serial",
                row -> row.getString(1),
                deviceId,
                present);
    }

    /** Lets the purchase of that serial number name the device; returns whether there is one that did not. */
    public boolean come(long customer, long deviceId, String serial) {
        return rows.run(
                        "update purchase p set device_id = d.id, site_id = d.site_id from device d where d.id = ?"
                                + " and p.customer_id = ? and lower(p.serial) = lower(?)"
                                + " and p.device_id is distinct from d.id",
                        deviceId,
                        customer,
                        serial)
                > 0;
    }
}
