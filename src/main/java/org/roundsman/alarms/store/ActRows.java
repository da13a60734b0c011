package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.life.AlarmState;
import org.roundsman.alarms.life.Deed;
import org.roundsman.alarms.life.Handling;
import org.roundsman.alarms.life.HandlingRules;
import org.roundsman.audit.Actor;
import org.roundsman.fleet.CustomerScope;

/** Writes what people do with alarms, in the transaction of the caller. */
public final class ActRows {

    private static final String STATE = "select a.id as alarm_id, e.id as episode_id, e.customer_id, e.resource_name,"
            + " e.type, e.began, e.raised, e.changed, e.cleared, e.severity, e.highest, e.text, e.text_at, e.summary,"
            + " e.operator, e.operator_by, e.operator_until, e.operator_reason, e.taken_by from alarm a"
            + " join alarm_episode e on e.id = a.episode_id";

    private ActRows() {}

    /**
     * What a deed did.
     *
     * @param name of the alarm, for the audit
     * @param changed false where it changed nothing and is not kept
     */
    public record Done(long alarmId, Long customerId, String name, Handling before, Handling after, boolean changed) {}

    private record At(long alarmId, long episodeId, Long customerId, String name, AlarmState state) {}

    /** Does it to the current or last episode; empty where the scope has no such alarm. */
    public static Optional<Done> act(
            Connection connection, CustomerScope scope, long alarmId, Deed deed, String who, Instant now)
            throws SQLException {
        Optional<At> found = Sql.rows(
                        connection,
                        STATE + " where a.id = ? and (?::bigint is null or e.customer_id = ?)",
                        ActRows::at,
                        alarmId,
                        scope.onlyCustomer(),
                        scope.onlyCustomer())
                .stream()
                .findFirst();
        if (found.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(act(connection, found.get(), deed, who, now));
    }

    private static Done act(Connection connection, At at, Deed deed, String who, Instant now) throws SQLException {
        Handling before = at.state().handling();
        Handling after = HandlingRules.after(at.state(), deed, who, now);
        boolean changed = !after.equals(before) || !deed.text().isEmpty();
        if (!after.equals(before)) {
            store(connection, at.episodeId(), after);
        }
        if (changed) {
            add(
                    connection,
                    List.of(new AlarmAct(
                            0, at.alarmId(), at.episodeId(), now, who, deed.kind(), deed.text(), deed.until())));
        }
        return new Done(at.alarmId(), at.customerId(), at.name(), before, after, changed);
    }

    private static At at(java.sql.ResultSet row) throws SQLException {
        return new At(
                row.getLong("alarm_id"),
                row.getLong("episode_id"),
                row.getObject("customer_id", Long.class),
                row.getString("type")
                        + (row.getString("resource_name").isEmpty() ? "" : " of " + row.getString("resource_name")),
                HeldRows.state(row));
    }

    private static void store(Connection connection, long episodeId, Handling handling) throws SQLException {
        Sql.run(
                connection,
                "update alarm_episode set operator = ?, operator_by = ?, operator_until = ?, operator_reason = ?,"
                        + " taken_by = ? where id = ?",
                handling.state().name(),
                handling.by(),
                handling.until(),
                handling.reason(),
                handling.takenBy(),
                episodeId);
    }

    /** Takes off the shelf what has been on it for its time; gives the ids of those alarms. */
    public static Set<Long> endShelves(Connection connection, Instant now) throws SQLException {
        List<At> over = Sql.rows(
                connection, STATE + " where e.operator = 'SHELVED' and e.operator_until <= ?", ActRows::at, now);
        Set<Long> ids = new LinkedHashSet<>();
        for (At at : over) {
            act(
                    connection,
                    at,
                    Deed.of(AlarmAct.Kind.UNSHELVE, "Its time on the shelf was over."),
                    Actor.itself().name(),
                    now);
            ids.add(at.alarmId());
        }
        return ids;
    }

    static AlarmAct itself(long alarmId, long episodeId, Instant at, AlarmAct.Kind kind, String text) {
        return new AlarmAct(0, alarmId, episodeId, at, Actor.itself().name(), kind, text, Optional.empty());
    }

    static void add(Connection connection, List<AlarmAct> acts) throws SQLException {
        Sql.batch(
                connection,
                "insert into alarm_act (alarm_id, episode_id, at, by, kind, text, until) values (?, ?, ?, ?, ?, ?, ?)",
                acts.stream()
                        .map(act -> new Sql.Row(
                                act.alarmId(),
                                act.episodeId(),
                                act.at(),
                                act.by(),
                                act.kind().name(),
                                act.text(),
                                act.until()))
                        .toList());
    }
}
