package org.roundsman.fleet.transfer;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.fleet.SiteDraft;

/**
 * A purchase as a row of text, with the site and the device it names, which the same upload may add.
 *
 * @param site null where none is named
 * @param device null where none is named
 */
record Bought(PurchaseDraft draft, Entry<SiteDraft> site, Entry<DeviceDraft> device) {

    /** Columns of the draft's fields, where they are not called the same. */
    static final Map<String, String> COLUMNS = Map.of(
            "siteId", "site",
            "deviceId", "device",
            "orderNumber", "order_number",
            "invoiceNumber", "invoice_number",
            "boughtOn", "bought_on",
            "deliveredOn", "delivered_on",
            "installedOn", "installed_on");

    static Map<String, String> cells(String customer, String site, String device, PurchaseDraft draft) {
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("customer", customer);
        cells.put("serial", draft.serial());
        cells.put("site", site);
        cells.put("device", device);
        cells.put("supplier", draft.supplier());
        cells.put("order_number", draft.orderNumber());
        cells.put("invoice_number", draft.invoiceNumber());
        cells.put("bought_on", Objects.toString(draft.boughtOn(), ""));
        cells.put("delivered_on", Objects.toString(draft.deliveredOn(), ""));
        cells.put("installed_on", Objects.toString(draft.installedOn(), ""));
        cells.put("price", draft.price() == null ? "" : draft.price().toPlainString());
        cells.put("currency", draft.currency());
        cells.put("note", draft.note());
        return cells;
    }

    Map<String, String> cells(String customer) {
        return cells(
                customer,
                site == null ? "" : site.last().name(),
                device == null ? "" : device.last().name(),
                draft);
    }

    /** All but the site and the device, which are looked up. */
    static PurchaseDraft read(Cells cells, Long siteId, Long deviceId) {
        String currency = cells.text("currency").toUpperCase(Locale.ROOT);
        return new PurchaseDraft(
                cells.text("serial"),
                siteId,
                deviceId,
                cells.text("supplier"),
                cells.text("order_number"),
                cells.text("invoice_number"),
                cells.day("bought_on"),
                cells.day("delivered_on"),
                cells.day("installed_on"),
                PurchaseDraft.usual(cells.amount("price"), currency),
                currency,
                cells.text("note"));
    }
}
