package org.roundsman.warranty;

import java.time.LocalDate;
import java.util.Optional;
import org.roundsman.catalogue.WarrantyTerms.Service;

/**
 * An extended contract as it is kept.
 *
 * @param number unique per customer without regard to case
 * @param service empty where not known
 * @param from first day that is covered
 * @param to last day that is covered
 * @param units how many units it covers
 */
public record Contract(
        long id,
        long customerId,
        String customer,
        String number,
        String supplier,
        Optional<Service> service,
        LocalDate from,
        LocalDate to,
        String note,
        int units) {

    public boolean holds(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(to);
    }
}
