package org.roundsman.system;

/** Sealed bytes cannot be opened: another key, another place, or damaged bytes. The message says which. */
public final class SealException extends RuntimeException {
    private static final long serialVersionUID = 1;

    SealException(String message) {
        super(message);
    }

    SealException(String message, Throwable cause) {
        super(message, cause);
    }
}
