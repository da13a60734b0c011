package org.roundsman.web.api;

import java.time.Instant;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerDraft;

/** Who pays. */
@Schema(name = "Customer")
record CustomerJson(
        @Schema(examples = "7") long id,
        @Schema(examples = "Pebblegate Dental") String name,
        @Schema(examples = "Three clinics") String note,
        @Schema(examples = "2026-03-02T09:15:00Z") Instant createdAt) {

    static CustomerJson of(Customer customer) {
        return new CustomerJson(customer.id, customer.name, customer.note, customer.createdAt);
    }

    /** A customer as entered. */
    @Schema(name = "CustomerEntry")
    record Entry(
            @Schema(required = true, examples = "Pebblegate Dental", maxLength = 120)
            String name,

            @Schema(examples = "Three clinics", maxLength = 2000)
            String note)
            implements ApiBody {

        static Entry of(Customer customer) {
            return new Entry(customer.name, customer.note);
        }

        CustomerDraft draft() {
            return new CustomerDraft(Given.text(name), Given.text(note));
        }
    }
}
