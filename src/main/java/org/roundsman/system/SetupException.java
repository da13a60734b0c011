package org.roundsman.system;

/** Something around the program is not as it must be; the message names the thing and the mend, for a person. */
public final class SetupException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** What is wrong, and with which status the process ends; documented in docs/operations.md. */
    public enum Fault {
        USAGE(2),
        DATA_FOLDER(11),
        ALREADY_RUNNING(12),
        PORT_IN_USE(13),
        DATABASE(14),
        KEY_FILE(15);

        private final int exitStatus;

        Fault(int exitStatus) {
            this.exitStatus = exitStatus;
        }

        /** Exit status of the process, 1 to 125. */
        public int exitStatus() {
            return exitStatus;
        }
    }

    private final Fault fault;

    public SetupException(Fault fault, String message) {
        super(message);
        this.fault = fault;
    }

    public SetupException(Fault fault, String message, Throwable cause) {
        super(message, cause);
        this.fault = fault;
    }

    public Fault fault() {
        return fault;
    }
}
