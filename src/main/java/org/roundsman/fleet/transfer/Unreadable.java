package org.roundsman.fleet.transfer;

/** A file that cannot be read as a table. The message says where, and what would be right. */
final class Unreadable extends Exception {
    private static final long serialVersionUID = 1;

    Unreadable(String reason) {
        super(reason);
    }
}
