package org.roundsman.readings.spans;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.roundsman.measure.Condition;

/**
 * Keeps the spans of all devices in step with their raw rows. Rounds in order extend what is known; a late one has the
 * time from the last certain round before it worked out anew from the raw rows. Used by one thread.
 */
public final class SpanTracker {

    private final Map<Long, SpanState> known = new HashMap<>();
    private final SpanTable table = new SpanTable();

    /**
     * What a batch changed: valid once its transaction has committed.
     *
     * @param states the new state of each device in the batch
     * @param touched quarter hours whose condition shares may have changed
     */
    public record Tracked(Map<Long, SpanState> states, Touched touched) {}

    /**
     * Works the rounds into the table of spans.
     *
     * @param connection in a transaction in which the rounds' raw rows are stored already
     * @param fresh new rounds by device, in time order
     */
    public Tracked track(Connection connection, Map<Long, List<Round>> fresh) throws SQLException {
        load(connection, fresh);
        Tracked outcome = new Tracked(new HashMap<>(), new Touched());
        List<SpanTable.Change> changes = new ArrayList<>();
        Map<Long, SpanState> seams = seams(connection, fresh);
        for (var entry : fresh.entrySet()) {
            Pass pass = new Pass(entry.getKey(), entry.getValue(), outcome);
            SpanState state = known.get(pass.device);
            if (state == null || pass.rounds.get(0).at() > state.last().at()) {
                pass.extend(state == null ? seams.get(pass.device) : state, state == null);
            } else {
                pass.rework(connection, state);
            }
            pass.change().ifPresent(changes::add);
        }
        table.apply(connection, changes);
        return outcome;
    }

    /** Tells that the batch's transaction has committed. */
    public void committed(Tracked outcome) {
        known.putAll(outcome.states());
    }

    /** Forgets every state; they are read from the database again. To be called when a transaction failed. */
    public void forget() {
        known.clear();
    }

    private void load(Connection connection, Map<Long, List<Round>> fresh) throws SQLException {
        Set<Long> missing =
                fresh.keySet().stream().filter(id -> !known.containsKey(id)).collect(Collectors.toSet());
        if (missing.isEmpty()) {
            return;
        }
        known.putAll(table.states(connection, missing));
    }

    /** States of devices without a round yet whose loaded history the first round continues. */
    private Map<Long, SpanState> seams(Connection connection, Map<Long, List<Round>> fresh) throws SQLException {
        Set<Long> first =
                fresh.keySet().stream().filter(id -> !known.containsKey(id)).collect(Collectors.toSet());
        Map<Long, SpanState> seams = new HashMap<>();
        if (!first.isEmpty()) {
            table.lastSpans(connection, first)
                    .forEach((id, span) ->
                            seams.put(id, span.continuedBy(fresh.get(id).get(0))));
        }
        return seams;
    }

    /** One device's part of a batch. */
    private final class Pass {
        private final long device;
        private final List<Round> rounds;
        private final Tracked outcome;
        private final TreeMap<Long, Turn> turns = new TreeMap<>();
        private Long cut;

        Pass(long device, List<Round> rounds, Tracked outcome) {
            this.device = device;
            this.rounds = rounds;
            this.outcome = outcome;
        }

        void extend(SpanState from, boolean first) {
            fold(from, rounds);
            if (first && from != null) {
                cut = from.last().at();
            } else if (!turns.isEmpty()) {
                cut = turns.firstKey();
            }
        }

        void rework(Connection connection, SpanState latest) throws SQLException {
            SpanTable.Restart restart =
                    table.restart(connection, device, rounds.get(0).at());
            cut = restart.cut();
            fold(restart.state(), restart.rounds());
            outcome.touched().between(cut, latest.last().at());
        }

        private void fold(SpanState from, List<Round> all) {
            SpanState state = from;
            for (Round round : all) {
                touch(state, round);
                state = SpanFold.step(state, round, turn -> turned(turn, round));
            }
            outcome.states().put(device, state);
        }

        private void turned(Turn turn, Round round) {
            turns.put(turn.at(), turn);
            if (turn.condition() == Condition.SILENT) {
                outcome.touched().between(turn.at(), round.at());
            }
        }

        private void touch(SpanState before, Round round) {
            outcome.touched().at(round.at());
            if (before != null && round.at() <= before.last().blindAfter()) {
                outcome.touched().between(before.last().at(), round.at());
            } else if (before != null) {
                outcome.touched().between(before.last().at(), before.last().due());
            }
        }

        Optional<SpanTable.Change> change() {
            return cut == null
                    ? Optional.empty()
                    : Optional.of(new SpanTable.Change(device, cut, List.copyOf(turns.values())));
        }
    }
}
