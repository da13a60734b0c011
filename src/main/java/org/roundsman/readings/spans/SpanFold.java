package org.roundsman.readings.spans;

import java.util.List;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;

/**
 * Finds condition spans from rounds in time order.
 *
 * <ul>
 *   <li>A round that answered means answering, one that was refused means refusing, from that round on.
 *   <li>Three unanswered rounds in a row mean silent, from the first of them on. Fewer leave the condition as it was.
 *   <li>A round later than two and a half times the announced interval after the one before it: from the time at which
 *       it was due until it came the device was unwatched, and the condition starts afresh.
 *   <li>Before a first verdict the device is unwatched.
 * </ul>
 */
public final class SpanFold {

    /** Unanswered rounds in a row that make a device silent. */
    public static final int MISSES = 3;

    private SpanFold() {}

    /**
     * Takes one round further.
     *
     * @param state null before the first round
     * @param round later than the state's last one
     * @param turns told of every change of condition, in order
     */
    public static SpanState step(SpanState state, Round round, Consumer<Turn> turns) {
        SpanState known = state;
        if (known == null) {
            known = begun(round, turns);
        } else if (round.at() <= known.last().at()) {
            throw new IllegalArgumentException("round at " + round.at() + " after " + known.last());
        } else if (round.at() > known.last().blindAfter()) {
            known = turn(known.after(known.last()), known.last().due(), Condition.UNWATCHED, null, turns);
        }
        return switch (round.outcome().kind()) {
            case ANSWERED -> turn(known.after(round), round.at(), Condition.ANSWERING, round.outcome(), turns);
            case REFUSED -> turn(known.after(round), round.at(), Condition.REFUSING, round.outcome(), turns);
            case UNANSWERED -> missed(known.missed(round), turns);
        };
    }

    /** All turns of rounds that are in time order without repeats, by the time from which they hold. */
    public static TreeMap<Long, Turn> turns(List<Round> rounds) {
        TreeMap<Long, Turn> turns = new TreeMap<>();
        SpanState state = null;
        for (Round round : rounds) {
            state = step(state, round, turn -> turns.put(turn.at(), turn));
        }
        return turns;
    }

    private static SpanState begun(Round round, Consumer<Turn> turns) {
        if (round.outcome().kind() == Outcome.Kind.UNANSWERED) {
            turns.accept(new Turn(round.at(), Condition.UNWATCHED, null));
        }
        return SpanState.of(round, Condition.UNWATCHED, round.at());
    }

    private static SpanState missed(SpanState state, Consumer<Turn> turns) {
        return state.misses() < MISSES
                ? state
                : turn(state, state.missingSince(), Condition.SILENT, state.missingOutcome(), turns);
    }

    private static SpanState turn(SpanState state, long at, Condition to, Outcome outcome, Consumer<Turn> turns) {
        if (state.condition() == to) {
            return state;
        }
        turns.accept(new Turn(at, to, outcome));
        return state.turned(to, at);
    }
}
