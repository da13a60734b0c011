package org.roundsman.catalogue;

import java.util.Optional;
import org.roundsman.fleet.Model;

/** Warranty terms as a person reads them. Pure. */
public final class TermsWords {

    private TermsWords() {}

    /** {@code 36 months from purchase, advance replacement}; {@code no warranty}. */
    public static String of(WarrantyTerms terms) {
        String what;
        if (terms instanceof WarrantyTerms.Months months) {
            what = months(months.months()) + " from " + months.from().word();
        } else if (terms instanceof WarrantyTerms.LifetimeAfterSale lifetime) {
            what = "lifetime: " + months(lifetime.months()) + " after end of sale";
        } else if (terms instanceof WarrantyTerms.LifetimeOfOwner) {
            what = "lifetime while the first owner keeps it";
        } else {
            what = "no warranty";
        }
        return terms.service().map(service -> what + ", " + service.word()).orElse(what);
    }

    /** Those of a model; empty where none are entered. */
    public static Optional<String> of(Model model) {
        return WarrantyTerms.of(model).map(TermsWords::of);
    }

    private static String months(int months) {
        return months + (months == 1 ? " month" : " months");
    }
}
