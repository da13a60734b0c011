package org.roundsman.web.warranty;

import java.time.LocalDate;
import java.util.List;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.warranty.Contract;
import org.roundsman.web.page.Words;

/** A contract in a list, in words. */
record ContractLine(
        long id,
        String number,
        String customer,
        String supplier,
        String service,
        String from,
        String to,
        String state,
        String units,
        String note) {

    static final List<String> HEADS =
            List.of("customer", "number", "supplier", "service", "first_day", "last_day", "state", "units", "note");

    static ContractLine of(Contract one, LocalDate today) {
        return new ContractLine(
                one.id(),
                one.number(),
                one.customer(),
                one.supplier(),
                one.service().map(WarrantyTerms.Service::word).orElse("not known"),
                one.from().toString(),
                one.to().toString(),
                one.holds(today) ? "running" : one.to().isBefore(today) ? "ended" : "to come",
                Words.count(one.units()),
                one.note());
    }

    /** What removing it does. */
    public String loss() {
        return units.equals("1") ? "1 unit loses its cover" : units + " units lose their cover";
    }

    List<String> row() {
        return List.of(customer, number, supplier, service, from, to, state, units.replace(",", ""), note);
    }
}
