package org.roundsman.dispatch;

/** What was asked for cannot be done as things stand; nothing was changed. The message is for people. */
public final class DeskRejected extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public DeskRejected(String message) {
        super(message);
    }
}
