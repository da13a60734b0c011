package org.roundsman.readings.sql;

/** A reading that no table can hold, whatever the state of the database. */
public final class UnstorableException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public UnstorableException(String message) {
        super(message);
    }
}
