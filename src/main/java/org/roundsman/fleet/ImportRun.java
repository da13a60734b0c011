package org.roundsman.fleet;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An upload with its dry run, as it stands.
 *
 * @param finishedAt when its state was reached, empty while work goes on
 * @param remark what a person should know of the state, or empty
 * @param counts rows by outcome; an outcome that no row has is 0
 * @param moved rows that came out differently than in the dry run before, after a refused apply
 * @param progress how far the work is
 */
public record ImportRun(
        long id,
        Instant startedAt,
        Optional<Instant> finishedAt,
        State state,
        String remark,
        List<Source> files,
        Map<ImportOutcome, Integer> counts,
        int moved,
        Progress progress) {

    /** Where an import stands. */
    public enum State {
        /** The dry run is being made. */
        CHECKING,
        /** The dry run is there; nothing is written. */
        CHECKED,
        /** It is being written. */
        APPLYING,
        /** All of it is written. */
        APPLIED,
        /** The dry run could not be made; nothing is written. */
        FAILED
    }

    /**
     * A file as it was read.
     *
     * @param encoding such as UTF-8
     * @param delimiter {@code comma}, {@code semicolon} or {@code tab}
     * @param rows without the header and empty rows
     */
    public record Source(String name, TransferTable table, String encoding, String delimiter, int rows) {}

    /** Rows done so far of all rows, in the present piece of work. */
    public record Progress(String work, int done, int total) {}

    /** Whether work goes on. */
    public boolean working() {
        return state == State.CHECKING || state == State.APPLYING;
    }

    public int count(ImportOutcome outcome) {
        return counts.getOrDefault(outcome, 0);
    }

    public int rows() {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** Whether it can be applied: the dry run is there, refuses nothing, and would write something. */
    public boolean applicable() {
        return state == State.CHECKED
                && count(ImportOutcome.REFUSED) == 0
                && count(ImportOutcome.NEW) + count(ImportOutcome.CHANGED) > 0;
    }
}
