package org.roundsman.dispatch.work;

import java.time.Instant;
import java.util.OptionalLong;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.store.BrandTable;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportLook.Brand;
import org.roundsman.system.Rows;

/** How reports look: by the brands of today, or as was settled when they were set on their way. */
public final class Looks {

    private static final String FIRM = "Roundsman";

    private final Rows rows;
    private final BrandTable brands;

    public Looks(Rows rows) {
        this.rows = rows;
        this.brands = new BrandTable(rows);
    }

    /** The firm's own brand of today. */
    public Brand firm() {
        return brands.now(OptionalLong.empty()).orElseGet(() -> Brand.named(FIRM));
    }

    /** The customer's brand of today; its name where none is kept. */
    public Brand customer(long id, String name) {
        return brands.now(OptionalLong.of(id)).orElseGet(() -> Brand.named(name));
    }

    /** @param now stands on the last page where nothing is settled yet */
    public ReportLook of(KeptReport report, Instant now) {
        ShelfTable.Settled kept = new ShelfTable(rows).settled(report.id()).orElseThrow();
        Brand firm = brands.find(kept.firmBrand()).orElseGet(this::firm);
        Brand customer =
                brands.find(kept.customerBrand()).orElseGet(() -> customer(report.customerId(), report.customer()));
        return new ReportLook(
                kept.language(),
                kept.paper(),
                firm,
                customer,
                kept.remark(),
                kept.costs(),
                kept.revision(),
                kept.settled().orElse(now));
    }

    /** Ids of the two brands that a report is settled with. */
    record Ids(long firm, long customer) {}

    Ids settle(KeptReport report, Instant now) {
        return new Ids(
                brands.settled(OptionalLong.empty(), Brand.named(FIRM), now),
                brands.settled(OptionalLong.of(report.customerId()), Brand.named(report.customer()), now));
    }
}
