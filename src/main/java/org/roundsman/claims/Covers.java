package org.roundsman.claims;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.claims.store.PurchaseTable;
import org.roundsman.claims.store.TermsTable;
import org.roundsman.fleet.CustomerScope;

/** Puts into words what is promised for a unit as of today. */
@ApplicationScoped
class Covers {

    private final TermsTable terms;
    private final PurchaseTable purchases;

    @Inject
    Covers(DataSource database) {
        this.terms = new TermsTable(database);
        this.purchases = new PurchaseTable(database);
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
        List<String> evidence = bought.map(one -> List.of("Purchase: " + Units.words(one)))
                .orElse(List.of("No purchase of this serial number is entered."));
        return new Cover(sold.map(Covers::words).orElse("not entered"), "not worked out", List.of(), evidence);
    }

    /** {@code 36 months from purchase, advance replacement}. */
    static String words(WarrantyTerms terms) {
        String served = terms.service().map(service -> ", " + service.word()).orElse("");
        if (terms instanceof WarrantyTerms.Months months) {
            return months.months() + " months from " + months.from().word() + served;
        }
        if (terms instanceof WarrantyTerms.LifetimeAfterSale lifetime) {
            return "lifetime, until " + lifetime.months() + " months after the last day of sale" + served;
        }
        return terms instanceof WarrantyTerms.LifetimeOfOwner
                ? "lifetime, while the first owner keeps it" + served
                : "sold without warranty";
    }
}
