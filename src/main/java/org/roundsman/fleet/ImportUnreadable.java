package org.roundsman.fleet;

import java.util.List;

/** An upload that cannot be read as tables; nothing of it was kept. */
public final class ImportUnreadable extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient List<Fault> faults;

    /**
     * One fault.
     *
     * @param file its shown name; empty for the upload as a whole
     * @param reason what is wrong, where, and what would be right
     */
    public record Fault(String file, String reason) {}

    public ImportUnreadable(List<Fault> faults) {
        super(faults.toString());
        this.faults = List.copyOf(faults);
    }

    /** Every fault found, at least one. */
    public List<Fault> faults() {
        return faults;
    }
}
