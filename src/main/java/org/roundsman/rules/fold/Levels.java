package org.roundsman.rules.fold;

/**
 * The fold of every rule that looks at a figure: a pure function.
 *
 * <ul>
 *   <li>A level goes up when the figure has been at or beyond its threshold in every reading for as long as the rule says,
 *       and down when it has been at or beyond its clearing threshold for as long. In between it stays as it is.
 *   <li>A missing figure is no evidence: it changes nothing. When no figure came for two and a half times as long as one
 *       was due, what was on its way begins anew, and what is up stays up.
 *   <li>The alarm has the severity of the worst level that is up; it changes up and down without the alarm going away.
 *   <li>A figure from before the last one changes nothing; the same figure again changes nothing either.
 * </ul>
 */
public final class Levels {

    /** So many times the announced interval may pass before evidence is broken. */
    public static final double PATIENCE = 2.5;

    private Levels() {}

    /** A new state, and what follows from it. */
    public record Step(LevelState state, Decision decision) {}

    /**
     * One figure.
     *
     * @param nextInMillis when the next figure is due, counted from {@code at}
     */
    public record Sample(long at, double figure, long nextInMillis) {

        long patience() {
            return (long) (nextInMillis * PATIENCE);
        }
    }

    /** Takes one figure further. */
    public static Step step(LevelState state, Sample sample, Ladder ladder) {
        if (Double.isNaN(sample.figure()) || sample.at() < state.at()) {
            return new Step(state, Decision.Nothing.NOTHING);
        }
        if (state.idle() && !ladder.overAny(sample.figure())) {
            return new Step(LevelState.IDLE, Decision.Nothing.NOTHING);
        }
        Pass pass = new Pass(state, sample, ladder);
        for (int level = 0; level < Ladder.LEVELS.length; level++) {
            pass.level(level);
        }
        return pass.result();
    }

    /** One figure on its way through the levels. */
    private static final class Pass {
        private final LevelState before;
        private final Sample sample;
        private final Ladder ladder;
        private final boolean broken;
        private final long[] since;
        private int up;
        private long began;
        private long held;
        private boolean orphaned;

        Pass(LevelState before, Sample sample, Ladder ladder) {
            this.before = before;
            this.sample = sample;
            this.ladder = ladder;
            this.broken = !before.follows(sample.at());
            this.since = before.copyOfSince();
            this.up = before.up();
            this.began = before.began();
        }

        void level(int level) {
            if (!ladder.has(level)) {
                orphaned |= before.isUp(level);
                up &= ~(1 << level);
                since[level] = LevelState.NONE;
            } else if (before.isUp(level)) {
                change(level, ladder.under(level, sample.figure()), ladder.clearAfter());
            } else {
                change(level, ladder.over(level, sample.figure()), ladder.raiseAfter());
            }
        }

        private void change(int level, boolean holds, long dwell) {
            if (!holds) {
                since[level] = LevelState.NONE;
                return;
            }
            if (broken || since[level] == LevelState.NONE) {
                since[level] = sample.at();
            }
            if (sample.at() - since[level] >= dwell) {
                turn(level);
            }
        }

        private void turn(int level) {
            held = Math.max(held, sample.at() - since[level]);
            if (!before.isUp(level) && before.up() == 0) {
                began = began == LevelState.NONE ? since[level] : Math.min(began, since[level]);
            }
            up ^= 1 << level;
            since[level] = LevelState.NONE;
        }

        /** The level that was up is not used any more: the alarm goes on at those that the figure calls for. */
        private void adopt() {
            for (int level = 0; level < Ladder.LEVELS.length; level++) {
                if (ladder.has(level) && ladder.over(level, sample.figure())) {
                    up |= 1 << level;
                    since[level] = LevelState.NONE;
                }
            }
        }

        Step result() {
            if (orphaned && up == 0) {
                adopt();
            }
            LevelState after =
                    new LevelState(sample.at(), sample.patience(), up, since, up == 0 ? LevelState.NONE : began);
            return new Step(after.idle() ? LevelState.IDLE : after, decision(after));
        }

        private Decision decision(LevelState after) {
            if (after.severity().equals(before.severity())) {
                return Decision.Nothing.NOTHING;
            }
            if (after.severity().isEmpty()) {
                int lowest = Integer.numberOfTrailingZeros(before.up());
                return new Decision.Clear(sample.figure(), ladder.clearing(lowest), held);
            }
            int worst = 31 - Integer.numberOfLeadingZeros(up);
            return new Decision.Raise(Ladder.LEVELS[worst], began, sample.figure(), ladder.threshold(worst), held);
        }
    }
}
