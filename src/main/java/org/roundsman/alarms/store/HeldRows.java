package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.life.AlarmState;
import org.roundsman.alarms.life.Handling;

/** Reads alarms by their keys, with what signals and people change of them. */
final class HeldRows {

    private static final String ASK = "select a.id as alarm_id, " + Keys.COLUMNS
            + ", e.id as episode_id, e.began, e.raised, e.changed, e.cleared, e.severity, e.highest, e.text,"
            + " e.text_at, e.summary, e.operator, e.operator_by, e.operator_until, e.operator_reason, e.taken_by"
            + " from alarm a join alarm_episode e on e.id = a.episode_id";

    private HeldRows() {}

    /** By key, in the order given; an alarm that never was is held as such. */
    static Map<AlarmKey, Held> of(Connection connection, Collection<AlarmKey> keys) throws SQLException {
        Map<AlarmKey, Held> held = new LinkedHashMap<>();
        keys.forEach(key -> held.computeIfAbsent(key, Held::new));
        Sql.rows(
                connection,
                ASK + Keys.JOIN,
                row -> found(held.get(Keys.read(row)), row),
                Keys.parameters(held.keySet()));
        return held;
    }

    /** Every active alarm whose device or site the fleet does not have any more. */
    static List<AlarmKey> orphans(Connection connection) throws SQLException {
        return Sql.rows(
                connection,
                "select " + Keys.COLUMNS + " from alarm_episode e join alarm a on a.id = e.alarm_id where e.cleared is"
                        + " null and (a.resource_kind = 'DEVICE' and not exists (select from device d"
                        + " where d.id = a.resource_id) or a.resource_kind = 'SITE' and not exists"
                        + " (select from site s where s.id = a.resource_id))",
                Keys::read);
    }

    private static Held found(Held held, ResultSet row) throws SQLException {
        held.found(row.getLong("alarm_id"), row.getLong("episode_id"), state(row));
        return held;
    }

    static AlarmState state(ResultSet row) throws SQLException {
        return new AlarmState(
                Sql.sure(row, "began"),
                Sql.sure(row, "raised"),
                Sql.sure(row, "changed"),
                Sql.moment(row, "cleared"),
                Severity.ofCode(row.getInt("severity")),
                Severity.ofCode(row.getInt("highest")),
                row.getString("text"),
                Sql.sure(row, "text_at"),
                row.getString("summary"),
                handling(row));
    }

    private static Handling handling(ResultSet row) throws SQLException {
        return new Handling(
                OperatorState.valueOf(row.getString("operator")),
                row.getString("operator_by"),
                Sql.moment(row, "operator_until"),
                row.getString("operator_reason"),
                row.getString("taken_by"));
    }
}
