package org.roundsman.alarms;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import javax.sql.DataSource;
import org.roundsman.alarms.quality.Appraisal;
import org.roundsman.alarms.quality.Raised;
import org.roundsman.alarms.store.Sql;

/** Tells how good the alarms of all customers were. Thread-safe. */
@ApplicationScoped
public class AlarmQuality {

    private final DataSource database;

    @Inject
    public AlarmQuality(DataSource database) {
        this.database = database;
    }

    /**
     * The report of a stretch of time.
     *
     * @param technicians how many people share the alarms, at least 1
     */
    public QualityReport report(Instant from, Instant to, int technicians) {
        return Appraisal.of(
                Sql.ask(
                        database,
                        connection -> Sql.rows(
                                connection,
                                "select e.alarm_id, e.type, e.device_id, e.resource_name, a.part, e.site, e.raised,"
                                        + " e.cleared, e.highest,"
                                        + " e.caused_by is null and not e.was_planned as counts from alarm_episode e"
                                        + " join alarm a on a.id = e.alarm_id"
                                        + " where e.raised < ? and (e.cleared is null or e.cleared >= ?)",
                                AlarmQuality::raised,
                                to,
                                from)),
                from,
                to,
                technicians);
    }

    private static Raised raised(ResultSet row) throws SQLException {
        AlarmType type = AlarmType.byId(row.getString("type")).orElseThrow();
        long deviceId = row.getLong("device_id");
        String site = row.getString("site");
        String name = row.getString("resource_name");
        String where = name.equals(site) || site.isEmpty() ? site : name + ", " + site;
        String part = row.getString("part");
        String device = part.isEmpty() ? where : where.replace(", " + part + ", " + site, ", " + site);
        return new Raised(
                row.getLong("alarm_id"),
                type,
                deviceId,
                device,
                where.isEmpty() ? type.title() : type.title() + ": " + where,
                Sql.sure(row, "raised"),
                Sql.moment(row, "cleared"),
                Severity.ofCode(row.getInt("highest")),
                row.getBoolean("counts"));
    }
}
