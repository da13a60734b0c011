package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.alarms.Severity;

/** Reads the episodes of a customer in a stretch of time, with who suffered and when somebody took them on. */
public final class PastRows {

    private static final String SELECT = """
        select e.id, e.alarm_id, e.type, e.device_id, e.site_id, e.time_zone, e.resource_name, e.began, e.raised, e.cleared,
               e.highest, e.cause, e.caused_by_episode, e.staff, e.guest, e.other, e.devices, e.service_hours, e.was_planned,
               array(select f.device_id from alarm_affected f where f.episode_id = e.id) as affected,
               (select min(h.at) from alarm_act h
                 where h.alarm_id = e.alarm_id and h.episode_id = e.id and h.kind in ('ACK', 'TAKE')) as taken
          from alarm_episode e
         where e.customer_id = ? and e.began < ? and (e.cleared is null or e.cleared >= ?)
         order by e.began, e.id
        """;

    private PastRows() {}

    public static List<PastEpisode> of(Connection connection, long customerId, Instant from, Instant to)
            throws SQLException {
        return Sql.rows(connection, SELECT, PastRows::read, customerId, to, from);
    }

    public static List<PastAlarms.Time> ofService(Connection connection, AlarmType type, Instant from)
            throws SQLException {
        return Sql.rows(
                connection,
                "select e.began, e.cleared from alarm_episode e where e.type = ? and e.device_id is null and e.site_id is null"
                        + " and (e.cleared is null or e.cleared >= ?) order by e.began, e.id",
                row -> new PastAlarms.Time(Sql.sure(row, "began"), Sql.moment(row, "cleared")),
                type.id(),
                from);
    }

    private static PastEpisode read(ResultSet row) throws SQLException {
        return new PastEpisode(
                row.getLong("id"),
                row.getLong("alarm_id"),
                AlarmType.byId(row.getString("type")).orElseThrow(),
                Sql.wide(row, "device_id"),
                Sql.wide(row, "site_id"),
                zone(row.getString("time_zone")),
                row.getString("resource_name"),
                Sql.sure(row, "began"),
                Sql.sure(row, "raised"),
                Sql.moment(row, "cleared"),
                Severity.ofCode(row.getInt("highest")),
                CauseKind.valueOf(row.getString("cause")),
                Sql.wide(row, "caused_by_episode"),
                VerdictRows.impact(row).clients(),
                row.getBoolean("was_planned"),
                Set.of((Long[]) row.getArray("affected").getArray()),
                Sql.moment(row, "taken"));
    }

    private static ZoneId zone(String name) {
        return name.isBlank() ? ZoneOffset.UTC : ZoneId.of(name);
    }
}
