package org.roundsman.rules.fold;

import java.util.Arrays;
import org.roundsman.alarms.Severity;
import org.roundsman.rules.Rule;
import org.roundsman.rules.RuleValues;

/**
 * The thresholds of a rule, made ready for the hot path. Each level has its own threshold to raise and its own to clear,
 * all at the same distance: that of the lowest level. Figures of rules for which low ones are bad are turned round. Times
 * are milliseconds. Immutable.
 */
public final class Ladder {

    /** Severities that can have a threshold, ascending. */
    static final Severity[] LEVELS = {Severity.WARNING, Severity.MINOR, Severity.MAJOR, Severity.CRITICAL};

    private final double sign;
    private final double[] raise = new double[LEVELS.length];
    private final double[] clear = new double[LEVELS.length];
    private final long raiseAfter;
    private final long clearAfter;
    private double lowest = Double.NaN;

    private Ladder(double sign, long raiseAfter, long clearAfter) {
        this.sign = sign;
        this.raiseAfter = raiseAfter;
        this.clearAfter = clearAfter;
        Arrays.fill(raise, Double.NaN);
        Arrays.fill(clear, Double.NaN);
    }

    /** The ladder of a rule with these values. A rule about a fact has one level: 1 where it is so, 0 where it is not. */
    public static Ladder of(Rule rule, RuleValues values) {
        Ladder ladder = new Ladder(
                rule.low() ? -1 : 1,
                values.raiseAfter().toMillis(),
                values.clearAfter().toMillis());
        if (rule.kind() == Rule.Kind.FACT) {
            ladder.set(index(values.severity()), 1, 1);
            ladder.lowest = 1;
            return ladder;
        }
        double distance = 0;
        for (int i = 0; i < LEVELS.length; i++) {
            if (values.level(LEVELS[i]).isPresent()) {
                double at = ladder.sign * values.level(LEVELS[i]).getAsDouble();
                if (Double.isNaN(ladder.lowest)) {
                    ladder.lowest = at;
                    // where values of several places lie over each other, clearing may come out above raising
                    distance = Math.max(0, at - ladder.sign * values.clear());
                }
                ladder.lowest = Math.min(ladder.lowest, at);
                ladder.set(i, at, distance);
            }
        }
        return ladder;
    }

    private void set(int level, double at, double distance) {
        raise[level] = at;
        clear[level] = at - distance;
    }

    static int index(Severity severity) {
        return Math.max(0, Arrays.asList(LEVELS).indexOf(severity));
    }

    boolean has(int level) {
        return !Double.isNaN(raise[level]);
    }

    /** Whether the figure is bad enough to raise that level. */
    boolean over(int level, double figure) {
        return sign * figure >= raise[level];
    }

    /** Whether the figure is good enough to clear that level. */
    boolean under(int level, double figure) {
        double turned = sign * figure;
        return turned <= clear[level] && turned < raise[level];
    }

    /** Whether the figure is bad enough for any level. */
    boolean overAny(double figure) {
        return sign * figure >= lowest;
    }

    /** The threshold to raise that level, as people entered it. */
    double threshold(int level) {
        return sign * raise[level];
    }

    /** The threshold to clear that level, as people think of it. */
    double clearing(int level) {
        return sign * clear[level];
    }

    long raiseAfter() {
        return raiseAfter;
    }

    long clearAfter() {
        return clearAfter;
    }
}
