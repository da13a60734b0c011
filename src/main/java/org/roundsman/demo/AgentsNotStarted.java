package org.roundsman.demo;

/** The invented agents could not start; the message says why, and the mend. */
public final class AgentsNotStarted extends RuntimeException {

    private static final long serialVersionUID = 1;

    public AgentsNotStarted(String message, Exception cause) {
        super(message, cause);
    }
}
