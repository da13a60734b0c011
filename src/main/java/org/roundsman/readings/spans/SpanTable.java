package org.roundsman.readings.spans;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;
import org.roundsman.readings.sql.Sql;

/** The table of spans, and what it takes to work one device's spans out again. */
final class SpanTable {

    /**
     * New turns of one device.
     *
     * @param cut spans that start from here on are void, the one that reaches here is cut or open again
     * @param turns in time order, none before the cut
     */
    record Change(long device, long cut, List<Turn> turns) {
        Long firstTurn() {
            return turns.isEmpty() ? null : turns.get(0).at();
        }
    }

    /** The rounds of a device to fold again, and the state before them. */
    record Restart(long cut, SpanState state, List<Round> rounds) {}

    private static final Integer[] UNANSWERED = java.util.Arrays.stream(Outcome.values())
            .filter(outcome -> outcome.kind() == Outcome.Kind.UNANSWERED)
            .map(Outcome::code)
            .toArray(Integer[]::new);

    Map<Long, SpanState> states(Connection connection, Collection<Long> devices) throws SQLException {
        Map<Long, SpanState> states = new HashMap<>();
        try (var statement = connection.prepareStatement("select device_id, last_round_at, outcome, next_in_s,"
                + " condition, since, misses, coalesce(missing_since, since) missing_since, missing_outcome"
                + " from device_now where device_id = any (?)")) {
            Sql.fill(statement, Sql.ids(connection, devices));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    states.put(row.getLong("device_id"), state(row));
                }
            }
        }
        return states;
    }

    private static SpanState state(ResultSet row) throws SQLException {
        int missing = row.getInt("missing_outcome");
        Outcome missingOutcome = row.wasNull() ? null : Outcome.ofCode(missing);
        return new SpanState(
                new Round(
                        Sql.millis(row, "last_round_at"),
                        Outcome.ofCode(row.getInt("outcome")),
                        row.getInt("next_in_s")),
                Condition.ofCode(row.getInt("condition")),
                Sql.millis(row, "since"),
                row.getInt("misses"),
                Sql.millis(row, "missing_since"),
                missingOutcome);
    }

    Map<Long, PastSpan> lastSpans(Connection connection, Collection<Long> devices) throws SQLException {
        Map<Long, PastSpan> spans = new HashMap<>();
        try (var statement = connection.prepareStatement("select distinct on (device_id) device_id, from_at, to_at,"
                + " condition from span where device_id = any (?) order by device_id, from_at desc")) {
            Sql.fill(statement, Sql.ids(connection, devices));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    spans.put(row.getLong("device_id"), PastSpan.of(row));
                }
            }
        }
        return spans;
    }

    /** Where to begin again when a round at {@code earliest} came late; its raw row is stored already. */
    Restart restart(Connection connection, long device, long earliest) throws SQLException {
        List<Round> certain = rounds(
                connection,
                "at < ? and outcome <> all (?) order by at desc limit 1",
                device,
                Sql.time(earliest),
                connection.createArrayOf("int", UNANSWERED));
        if (!certain.isEmpty()) {
            Round round = certain.get(0);
            PastSpan span = spanBefore(connection, device, round.at() + 1);
            if (span != null && span.reaches(round.at() + 1)) {
                return new Restart(
                        round.at() + 1,
                        SpanState.of(round, span.condition(), span.from()),
                        rounds(connection, "at > ? order by at", device, Sql.time(round.at())));
            }
        }
        return fromFirst(connection, device, rounds(connection, "true order by at", device));
    }

    private Restart fromFirst(Connection connection, long device, List<Round> rounds) throws SQLException {
        Round first = rounds.get(0);
        PastSpan before = spanBefore(connection, device, first.at());
        if (before != null && before.reaches(first.at())) {
            Round just = new Round(first.at() - 1, first.outcome(), first.nextSeconds());
            return new Restart(first.at(), SpanState.of(just, before.condition(), before.from()), rounds);
        }
        SpanState seam = before == null ? null : before.continuedBy(first);
        return new Restart(seam == null ? first.at() : before.to(), seam, rounds);
    }

    private static PastSpan spanBefore(Connection connection, long device, long at) throws SQLException {
        try (var statement = connection.prepareStatement("select from_at, to_at, condition from span"
                + " where device_id = ? and from_at < ? order by from_at desc limit 1")) {
            Sql.fill(statement, device, Sql.time(at));
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? PastSpan.of(row) : null;
            }
        }
    }

    private static List<Round> rounds(Connection connection, String which, Object... parameters) throws SQLException {
        List<Round> rounds = new ArrayList<>();
        try (var statement = connection.prepareStatement(
                "select at, outcome, next_in_s from reading_device where device_id = ? and " + which)) {
            Sql.fill(statement, parameters);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    rounds.add(new Round(
                            Sql.millis(row, "at"), Outcome.ofCode(row.getInt("outcome")), row.getInt("next_in_s")));
                }
            }
        }
        return rounds;
    }

    void apply(Connection connection, List<Change> changes) throws SQLException {
        if (changes.isEmpty()) {
            return;
        }
        var devices = Sql.ids(connection, changes.stream().map(Change::device).toList());
        var cuts = Sql.times(connection, changes.stream().map(Change::cut).toList());
        var ends = Sql.times(connection, changes.stream().map(Change::firstTurn).toList());
        Sql.run(
                connection,
                "delete from span s using unnest(?::bigint[], ?::timestamptz[]) c (device_id, cut)"
                        + " where s.device_id = c.device_id and s.from_at >= c.cut",
                devices,
                cuts);
        Sql.run(
                connection,
                "update span s set to_at = c.turn"
                        + " from unnest(?::bigint[], ?::timestamptz[], ?::timestamptz[]) c (device_id, cut, turn)"
                        + " where s.device_id = c.device_id and s.from_at < c.cut"
                        + " and (s.to_at is null or s.to_at >= c.cut)",
                devices,
                cuts,
                ends);
        insert(connection, changes);
    }

    private static void insert(Connection connection, List<Change> changes) throws SQLException {
        try (var statement = connection.prepareStatement(
                "insert into span (device_id, from_at, to_at, condition, outcome) values (?, ?, ?, ?, ?)")) {
            for (Change change : changes) {
                for (int i = 0; i < change.turns().size(); i++) {
                    Turn turn = change.turns().get(i);
                    boolean last = i + 1 == change.turns().size();
                    statement.setLong(1, change.device());
                    statement.setObject(2, Sql.time(turn.at()));
                    statement.setObject(
                            3, last ? null : Sql.time(change.turns().get(i + 1).at()));
                    statement.setInt(4, turn.condition().code());
                    statement.setObject(
                            5, turn.outcome() == null ? null : turn.outcome().code(), java.sql.Types.INTEGER);
                    statement.addBatch();
                }
            }
            statement.executeBatch();
        }
    }
}
