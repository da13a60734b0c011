package org.roundsman.rules.fold;

import java.util.Arrays;
import java.util.Optional;
import org.roundsman.alarms.Severity;

/**
 * Where a rule stands for one resource: which levels are up, and since when the figure has held on the way up or down.
 * Immutable. Times are milliseconds since 1970-01-01T00:00Z.
 */
public final class LevelState {

    /** Nothing is up and nothing is on its way. */
    public static final LevelState IDLE = new LevelState(Long.MIN_VALUE, 0, 0, noTimes(), Long.MIN_VALUE);

    static final long NONE = Long.MIN_VALUE;

    private final long at;
    private final long patience;
    private final int up;
    private final long[] since;
    private final long began;

    /**
     * @param at of the last figure
     * @param patience how long after it the next figure still counts as following it
     * @param up the levels that are up, as bits
     * @param since by level: from when on the figure has held to change it; NONE where it does not
     * @param began of the fault, while a level is up
     */
    LevelState(long at, long patience, int up, long[] since, long began) {
        this.at = at;
        this.patience = patience;
        this.up = up;
        this.since = since;
        this.began = began;
    }

    private static long[] noTimes() {
        long[] none = new long[Ladder.LEVELS.length];
        Arrays.fill(none, NONE);
        return none;
    }

    /** As of an alarm that is known to be up with that severity since then. */
    public static LevelState raised(Severity severity, long began, long at) {
        return new LevelState(at, 0, upTo(severity), noTimes(), began);
    }

    /**
     * This state corrected to what is known for certain: that an alarm has that severity, or that there is none. What is on
     * its way to other levels stays on its way.
     */
    public LevelState corrected(Optional<Severity> severity, long knownBegan) {
        int right = severity.map(LevelState::upTo).orElse(0);
        long[] kept = since.clone();
        for (int i = 0; i < kept.length; i++) {
            if ((right & 1 << i) != (up & 1 << i)) {
                kept[i] = NONE;
            }
        }
        return new LevelState(at, patience, right, kept, right == 0 ? NONE : knownBegan);
    }

    private static int upTo(Severity severity) {
        return (1 << Ladder.index(severity) + 1) - 1;
    }

    long at() {
        return at;
    }

    /** Whether a figure at that time follows the last one closely enough to be evidence for the time between. */
    boolean follows(long next) {
        return at != NONE && next - at <= patience;
    }

    boolean isUp(int level) {
        return (up & 1 << level) != 0;
    }

    int up() {
        return up;
    }

    long since(int level) {
        return since[level];
    }

    long began() {
        return began;
    }

    long[] copyOfSince() {
        return since.clone();
    }

    /** The worst level that is up. */
    public Optional<Severity> severity() {
        return up == 0 ? Optional.empty() : Optional.of(Ladder.LEVELS[31 - Integer.numberOfLeadingZeros(up)]);
    }

    /** Whether it can be forgotten: nothing is up, nothing on its way. */
    public boolean idle() {
        return up == 0 && Arrays.stream(since).allMatch(time -> time == NONE);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LevelState that
                && at == that.at
                && patience == that.patience
                && up == that.up
                && began == that.began
                && Arrays.equals(since, that.since);
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(at) + 7 * up + Arrays.hashCode(since);
    }

    @Override
    public String toString() {
        return severity().map(Severity::word).orElse("clear") + " at " + at + ", since " + Arrays.toString(since);
    }
}
