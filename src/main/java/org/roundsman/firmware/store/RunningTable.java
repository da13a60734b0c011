package org.roundsman.firmware.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.firmware.FirmwarePlace;
import org.roundsman.firmware.Running;
import org.roundsman.fleet.DeviceKind;

/** Reads what devices run: one statement, whatever their number. */
public final class RunningTable {

    private static final String SELECT = """
        select d.id, d.name, d.kind, f.value, f.since, c.id as customer_id, c.name as customer, s.id as site_id,
               s.name as site, s.time_zone, coalesce(m.kind <> d.kind, false) as other_kind,
               m.id as model_id, m.maker || ' ' || m.name as model,
               l.id as line_id, l.name as line
          from device d
          join site s on s.id = d.site_id
          join customer c on c.id = s.customer_id
          left join model m on m.id = d.model_id
          left join firmware_line l on l.id = m.firmware_line_id
          left join device_fact f on f.device_id = d.id and f.fact = 'FIRMWARE'
         where (?::bigint is null or c.id = ?)
        """;

    private static final String ORDER = " order by lower(c.name), c.id, lower(s.name), s.id, lower(d.name), d.id";

    private final Sql sql;

    public RunningTable(DataSource database) {
        this.sql = new Sql(database);
    }

    /** Of every device of the customer, or of all where that is null. */
    public List<Running> all(Long customer) {
        Map<String, ZoneId> zones = new HashMap<>();
        return sql.rows(SELECT + ORDER, row -> running(row, zones), customer, customer);
    }

    /** Of all devices at the sites of these. */
    public List<Running> besides(Long customer, Collection<Long> devices) {
        Map<String, ZoneId> zones = new HashMap<>();
        return sql.rows(
                SELECT + " and d.site_id in (select site_id from device where id = any (?))" + ORDER,
                row -> running(row, zones),
                customer,
                customer,
                devices);
    }

    /** Of every device of a model. */
    public List<Running> ofModel(long model) {
        Map<String, ZoneId> zones = new HashMap<>();
        return sql.rows(SELECT + " and m.id = ?" + ORDER, row -> running(row, zones), null, null, model);
    }

    private static Running running(ResultSet row, Map<String, ZoneId> zones) throws SQLException {
        FirmwarePlace place = new FirmwarePlace(
                row.getLong("customer_id"),
                row.getString("customer"),
                row.getLong("site_id"),
                row.getString("site"),
                zones.computeIfAbsent(row.getString("time_zone"), ZoneId::of),
                Sql.number(row, "model_id"),
                Sql.text(row, "model"),
                Sql.number(row, "line_id"),
                Sql.text(row, "line"));
        return new Running(
                row.getLong("id"),
                row.getString("name"),
                DeviceKind.valueOf(row.getString("kind")),
                Sql.text(row, "value").strip(),
                Sql.moment(row, "since"),
                row.getBoolean("other_kind"),
                place);
    }
}
