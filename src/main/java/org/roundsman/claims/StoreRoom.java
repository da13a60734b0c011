package org.roundsman.claims;

import java.util.OptionalLong;

/**
 * A room in which spares lie.
 *
 * @param customerId whose room it is; empty for the firm's own
 * @param customer name of that customer, or empty
 * @param spares how many lie there
 */
public record StoreRoom(long id, OptionalLong customerId, String customer, String name, String note, int spares) {

    /** As lists show it. */
    public String words() {
        return name + (customer.isEmpty() ? "" : ", " + customer);
    }
}
