package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.LinkedHashSet;
import java.util.Set;

/** Keeps the names of active episodes as the fleet has them; those of past episodes stay as they were. */
public final class NameRows {

    private static final String DIFFERENT = "(e.customer_id, e.customer, e.site_id, e.site, e.time_zone,"
            + " e.resource_name, e.place) is distinct from (f.customer_id, f.customer, f.site_id, f.site, f.time_zone,"
            + " f.name, f.place)";

    private static final String SITES = "select 'SITE' as kind, s.id as id, c.id as customer_id, c.name as customer,"
            + " s.id as site_id, s.name as site, s.time_zone, s.name as name, '' as place"
            + " from site s join customer c on c.id = s.customer_id";

    private static final String DEVICES =
            "select 'DEVICE', d.id, c.id, c.name, s.id, s.name, s.time_zone, d.name, d.place"
                    + " from device d join site s on s.id = d.site_id join customer c on c.id = s.customer_id";

    private NameRows() {}

    /** Takes over what was renamed or moved; gives the ids of the alarms. */
    public static Set<Long> refresh(Connection connection) throws SQLException {
        return new LinkedHashSet<>(Sql.rows(
                connection,
                "update alarm_episode e set customer_id = f.customer_id, customer = f.customer, site_id = f.site_id,"
                        + " site = f.site, time_zone = f.time_zone, resource_name = f.name, place = f.place from ("
                        + "select o.id as episode_id, n.customer_id, n.customer, n.site_id, n.site, n.time_zone, n.name"
                        + " || case when a.part = '' then '' else ', ' || a.part end as name, n.place"
                        + " from alarm_episode o join alarm a on a.id = o.alarm_id join (" + SITES + " union all "
                        + DEVICES
                        + ") n on n.kind = a.resource_kind and n.id = a.resource_id where o.cleared is null) f"
                        + " where e.id = f.episode_id and " + DIFFERENT + " returning e.alarm_id",
                row -> row.getLong(1)));
    }
}
