package org.roundsman.warranty;

import java.time.LocalDate;
import java.util.Optional;
import org.roundsman.catalogue.WarrantyTerms.Service;

/**
 * Days that are covered without a break, both ends inclusive.
 *
 * @param from {@link #ALWAYS} where the first day does not matter
 * @param to {@link #OPEN} where there is no end
 */
record Stretch(LocalDate from, LocalDate to, Optional<Service> service) {

    static final LocalDate ALWAYS = LocalDate.MIN;
    static final LocalDate OPEN = LocalDate.MAX;

    boolean holds(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(to);
    }
}
