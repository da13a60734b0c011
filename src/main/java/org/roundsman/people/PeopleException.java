package org.roundsman.people;

/** An account cannot be made or changed in that way; the message says why and which field to mend. */
public class PeopleException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String field;

    public PeopleException(String field, String message) {
        super(message);
        this.field = field;
    }

    /** Name of the form field at fault: name, role, customer or password; empty for the whole. */
    public String field() {
        return field;
    }
}
