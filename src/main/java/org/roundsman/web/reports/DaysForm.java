package org.roundsman.web.reports;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.fleet.InputRejected;

/**
 * A report of any days, as its form sends it.
 *
 * @param last the last day that counts
 */
record DaysForm(
        @RestForm String customer,
        @RestForm String from,
        @RestForm String last) {

    static final DaysForm EMPTY = new DaysForm("", "", "");

    DaysForm {
        customer = Asked.text(customer);
        from = Asked.text(from);
        last = Asked.text(last);
    }

    /**
     * The days.
     *
     * @param to the day after the last one
     */
    record Days(long customerId, LocalDate from, LocalDate to) {}

    /**
     * What was entered.
     *
     * @throws InputRejected naming the fields that say nothing
     */
    Days days() {
        Map<String, String> faults = new LinkedHashMap<>();
        if (Asked.number(customer).isEmpty()) {
            faults.put("customer", "choose one");
        }
        if (Asked.day(from).isEmpty()) {
            faults.put("from", "a day such as 2026-10-01");
        }
        if (Asked.day(last).isEmpty()) {
            faults.put("last", "a day such as 2026-10-31");
        }
        if (faults.isEmpty() && Asked.day(last).get().isBefore(Asked.day(from).get())) {
            faults.put("last", "not before the first day");
        }
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
        return new Days(
                Asked.number(customer).getAsLong(),
                Asked.day(from).get(),
                Asked.day(last).get().plusDays(1));
    }
}
