package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Severity;

/** Reads alarms, each with one of its episodes. */
public final class OpenRows {

    /** Alarms with every episode; narrow it down with {@code e} and {@code a}. */
    public static final String ALL = "select a.id as alarm_id, " + Keys.COLUMNS + """
        , e.id as episode_id, e.customer_id, e.customer, e.site_id, e.site, e.time_zone, e.resource_name, e.place,
        e.severity, e.began, e.raised, e.changed, e.cleared, e.text, e.summary, e.operator, e.operator_by,
        e.operator_until, e.operator_reason, e.taken_by, e.cause, e.caused_by, e.evidence, e.staff, e.guest, e.other,
        e.devices, e.service_hours, e.settled, e.planned, coalesce(p.pointing, 0) as pointing
        from alarm_episode e join alarm a on a.id = e.alarm_id
        left join (select caused_by_episode, count(*) as pointing from alarm_episode
        where cleared is null and caused_by_episode is not null group by caused_by_episode) p
        on p.caused_by_episode = e.id\
        """;

    /** Such a condition comes with {@code scope.onlyCustomer()} twice. */
    public static final String IN_SCOPE = " (?::bigint is null or e.customer_id = ?)";

    private OpenRows() {}

    /** What the condition, which begins with {@code where}, leaves. */
    public static List<OpenAlarm> find(Connection connection, String condition, Object... parameters)
            throws SQLException {
        return Sql.rows(connection, ALL + condition, OpenRows::read, parameters);
    }

    private static OpenAlarm read(ResultSet row) throws SQLException {
        Optional<Instant> cleared = Sql.moment(row, "cleared");
        String summary = row.getString("summary");
        return new OpenAlarm(
                row.getLong("alarm_id"),
                row.getLong("episode_id"),
                Keys.read(row),
                Sql.wide(row, "customer_id"),
                row.getString("customer"),
                Sql.wide(row, "site_id"),
                row.getString("site"),
                row.getString("time_zone"),
                row.getString("resource_name"),
                row.getString("place"),
                Severity.ofCode(row.getInt("severity")),
                Sql.sure(row, "began"),
                Sql.sure(row, "raised"),
                Sql.sure(row, "changed"),
                cleared,
                cleared.isEmpty() || summary.isEmpty() ? row.getString("text") : summary,
                OperatorState.valueOf(row.getString("operator")),
                row.getString("operator_by"),
                Sql.moment(row, "operator_until"),
                row.getString("operator_reason"),
                row.getString("taken_by"),
                CauseKind.valueOf(row.getString("cause")),
                Sql.wide(row, "caused_by"),
                Sql.texts(row, "evidence"),
                VerdictRows.impact(row),
                row.getInt("pointing"),
                row.getBoolean("planned"),
                row.getBoolean("settled"));
    }
}
