package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmChange;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Episode;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.CustomerScope;

/** Reads the past of one alarm, newest first: as far as a scope may see it, before a number, at most so many. */
public final class HistoryRows {

    private static final String OF_ALARM =
            " join alarm_episode e on e.id = h.episode_id where h.alarm_id = ? and h.id < ? and" + OpenRows.IN_SCOPE
                    + " order by h.id desc limit ?";

    private HistoryRows() {}

    public static List<AlarmChange> changes(
            Connection connection, CustomerScope scope, long alarmId, long before, int most) throws SQLException {
        Long only = scope.onlyCustomer();
        return Sql.rows(
                connection,
                "select h.* from alarm_change h" + OF_ALARM,
                HistoryRows::change,
                alarmId,
                before,
                only,
                only,
                most);
    }

    /** Changes with a greater number, oldest first. */
    public static List<AlarmChange> changesAfter(Connection connection, long changeId, int most) throws SQLException {
        return Sql.rows(
                connection,
                "select * from alarm_change where id > ? order by id limit ?",
                HistoryRows::change,
                changeId,
                most);
    }

    public static List<AlarmAct> acts(Connection connection, CustomerScope scope, long alarmId, long before, int most)
            throws SQLException {
        Long only = scope.onlyCustomer();
        return Sql.rows(
                connection,
                "select h.* from alarm_act h" + OF_ALARM,
                HistoryRows::act,
                alarmId,
                before,
                only,
                only,
                most);
    }

    public static List<Episode> episodes(
            Connection connection, CustomerScope scope, long alarmId, long before, int most) throws SQLException {
        Long only = scope.onlyCustomer();
        return Sql.rows(
                connection,
                "select e.*, array(select f.device_id from alarm_affected f where f.episode_id = e.id order by f.name,"
                        + " f.device_id) as affected, array(select f.name from alarm_affected f where f.episode_id = e.id"
                        + " order by f.name, f.device_id) as affected_names from alarm_episode e where e.alarm_id = ? and"
                        + " e.id < ? and"
                        + OpenRows.IN_SCOPE + " order by e.id desc limit ?",
                HistoryRows::episode,
                alarmId,
                before,
                only,
                only,
                most);
    }

    private static AlarmChange change(ResultSet row) throws SQLException {
        int severity = row.getInt("severity");
        return new AlarmChange(
                row.getLong("id"),
                row.getLong("alarm_id"),
                row.getLong("episode_id"),
                Sql.sure(row, "at"),
                severity == Severity.CLEARED_CODE ? Optional.empty() : Optional.of(Severity.ofCode(severity)),
                row.getString("text"));
    }

    private static AlarmAct act(ResultSet row) throws SQLException {
        return new AlarmAct(
                row.getLong("id"),
                row.getLong("alarm_id"),
                row.getLong("episode_id"),
                Sql.sure(row, "at"),
                row.getString("by"),
                AlarmAct.Kind.valueOf(row.getString("kind")),
                row.getString("text"),
                Sql.moment(row, "until"));
    }

    private static Episode episode(ResultSet row) throws SQLException {
        return new Episode(
                row.getLong("id"),
                row.getLong("alarm_id"),
                Sql.sure(row, "began"),
                Sql.sure(row, "raised"),
                Sql.moment(row, "cleared"),
                Severity.ofCode(row.getInt("severity")),
                Severity.ofCode(row.getInt("highest")),
                row.getString("text"),
                row.getString("summary"),
                CauseKind.valueOf(row.getString("cause")),
                Sql.wide(row, "caused_by"),
                Sql.wide(row, "caused_by_episode"),
                Sql.texts(row, "evidence"),
                VerdictRows.impact(row),
                affected(row),
                row.getBoolean("settled"),
                row.getBoolean("planned"),
                row.getBoolean("was_planned"));
    }

    private static List<Episode.Affected> affected(ResultSet row) throws SQLException {
        Long[] ids = (Long[]) row.getArray("affected").getArray();
        List<String> names =
                Arrays.asList((String[]) row.getArray("affected_names").getArray());
        return IntStream.range(0, ids.length)
                .mapToObj(i -> new Episode.Affected(ids[i], names.get(i)))
                .toList();
    }
}
