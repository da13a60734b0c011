package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.catalogue.TermsWords;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.claims.store.PurchaseTable;
import org.roundsman.claims.store.TermsTable;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.warranty.CoverStatus;
import org.roundsman.warranty.CoverStep;
import org.roundsman.warranty.Evidence;
import org.roundsman.warranty.Evidences;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;

/** Puts into words what is promised for a unit as of today. */
@ApplicationScoped
class Covers {

    private final TermsTable terms;
    private final PurchaseTable purchases;
    private final Warranties warranties;
    private final Evidences evidences;

    @Inject
    Covers(DataSource database, Warranties warranties, Evidences evidences) {
        this.terms = new TermsTable(database);
        this.purchases = new PurchaseTable(database);
        this.warranties = warranties;
        this.evidences = evidences;
    }

    /**
     * What is promised.
     *
     * @param deviceId where the unit stands, or empty
     */
    Cover of(CustomerScope scope, OptionalLong deviceId, Unit unit) {
        Optional<WarrantyTerms> sold =
                unit.modelId().isPresent() ? terms.of(unit.modelId().getAsLong()) : Optional.empty();
        Optional<PurchaseTable.Bought> bought = purchases.of(unit.owner(), unit.serial());
        Optional<UnitCover> cover = cover(scope, deviceId, unit, bought);
        return new Cover(
                sold.map(TermsWords::of).orElse("not entered"),
                cover.map(Covers::words).orElse(CoverStatus.MISSING.word()),
                cover.map(one -> one.derivation().stream().map(CoverStep::text).toList())
                        .orElse(List.of("nothing is known of this very unit but its serial number")),
                evidence(scope, bought));
    }

    /** Of the device while it says this very serial number, else of the purchase: another unit's cover is none of its own. */
    private Optional<UnitCover> cover(
            CustomerScope scope, OptionalLong deviceId, Unit unit, Optional<PurchaseTable.Bought> bought) {
        Optional<UnitCover> standing =
                deviceId.isPresent() ? warranties.ofDevice(scope, deviceId.getAsLong()) : Optional.empty();
        return standing.filter(one -> one.serial().equalsIgnoreCase(unit.serial()))
                .or(() -> bought.flatMap(one -> warranties.ofPurchase(scope, one.id())));
    }

    private List<String> evidence(CustomerScope scope, Optional<PurchaseTable.Bought> bought) {
        if (bought.isEmpty()) {
            return List.of("No purchase of this serial number is entered.");
        }
        List<String> lines = new ArrayList<>(List.of("Purchase: " + Units.words(bought.get())));
        List<Evidence> files = evidences.list(scope, bought.get().id());
        files.forEach(file -> lines.add("Attached: " + file.name() + " (" + file.kind() + ")"));
        if (files.isEmpty()) {
            lines.add("No invoice or delivery note is attached to it.");
        }
        return lines;
    }

    /** {@code covered until 2027-02-28}, {@code ended 2025-12-31}. */
    static String words(UnitCover cover) {
        String day = cover.lastDay().map(Object::toString).orElse("");
        if (cover.status() == CoverStatus.MISSING) {
            return CoverStatus.MISSING.word();
        }
        if (cover.status() == CoverStatus.ENDED) {
            return day.isEmpty() ? "not covered" : "ended " + day;
        }
        return day.isEmpty() ? "covered without an end" : "covered until " + day;
    }
}
