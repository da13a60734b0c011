package org.roundsman.warranty;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.roundsman.catalogue.WarrantyTerms.Service;

/**
 * How the cover of a unit stands on a day.
 *
 * @param lastDay the last day that is covered without a gap, or was; empty where there is no end, where none is known, and
 *     where nothing was ever promised
 * @param service how a claim is served today; empty where that is not known or nothing is covered
 * @param derivation every step in order; never empty
 * @param begins when a contract begins that is still to come and does not prolong what covers before it
 */
public record Cover(
        CoverStatus status,
        Optional<LocalDate> lastDay,
        Optional<Service> service,
        List<CoverStep> derivation,
        Optional<LocalDate> begins) {

    public Cover {
        derivation = List.copyOf(derivation);
    }
}
