package org.roundsman.fleet;

/** Whose data a question may see. Every question about a customer's data takes one. */
public sealed interface CustomerScope {

    /** Every customer: the firm's own people. */
    record Everyone() implements CustomerScope {}

    /** One customer and nobody else: a viewer. */
    record One(long customerId) implements CustomerScope {}

    static CustomerScope everyone() {
        return new Everyone();
    }

    static CustomerScope of(long customerId) {
        return new One(customerId);
    }

    default boolean includes(long customerId) {
        return this instanceof Everyone || this instanceof One one && one.customerId == customerId;
    }

    /** The one customer's id, or null for everyone: as an SQL parameter in {@code (? is null or customer_id = ?)}. */
    default Long onlyCustomer() {
        return this instanceof One one ? one.customerId : null;
    }
}
