package org.roundsman.snmp;

/** A profile cannot be used; the message names file, line and key, and what would be right. */
public final class ProfileException extends RuntimeException {
    private static final long serialVersionUID = 1;

    public ProfileException(String message) {
        super(message);
    }
}
