package org.roundsman.planned;

/** How far planned work reaches. The name is what the table stores. */
public enum Reach {
    /** Every site of a customer. */
    CUSTOMER,
    /** One site with all its devices. */
    SITE,
    /** One device. */
    DEVICE
}
