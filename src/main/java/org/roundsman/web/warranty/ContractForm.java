package org.roundsman.web.warranty;

import java.util.Arrays;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.warranty.Contract;
import org.roundsman.warranty.ContractDraft;

/** What the form of a contract sent, as text. */
record ContractForm(
        @RestForm String customer,
        @RestForm String number,
        @RestForm String supplier,
        @RestForm String service,
        @RestForm String from,
        @RestForm String to,
        @RestForm String note) {

    ContractForm {
        customer = Asked.text(customer);
        number = Asked.text(number);
        supplier = Asked.text(supplier);
        service = Asked.text(service);
        from = Asked.text(from);
        to = Asked.text(to);
        note = Asked.text(note);
    }

    static ContractForm blank(String customer) {
        return new ContractForm(customer, "", "", "", "", "", "");
    }

    static ContractForm of(Contract one) {
        return new ContractForm(
                String.valueOf(one.customerId()),
                one.number(),
                one.supplier(),
                one.service().map(Enum::name).orElse(""),
                one.from().toString(),
                one.to().toString(),
                one.note());
    }

    ContractDraft draft() {
        return new ContractDraft(
                number,
                supplier,
                service,
                Asked.day(from).orElse(null),
                Asked.day(to).orElse(null),
                note);
    }

    /** Serial numbers out of pasted text: one a line, or between commas, semicolons and tabs. */
    static List<String> serials(String text) {
        return Arrays.stream(Asked.text(text).split("[\\r\\n,;\\t]+"))
                .map(String::strip)
                .filter(one -> !one.isEmpty())
                .distinct()
                .toList();
    }
}
