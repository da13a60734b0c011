package org.roundsman.firmware.store;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import javax.sql.DataSource;

/** Reads how many clients sites had. */
public final class PeopleTable {

    private final Sql sql;

    public PeopleTable(DataSource database) {
        this.sql = new Sql(database);
    }

    /** Clients in the busiest quarter hour since then, by site; sites without figures are left out. */
    public Map<Long, Integer> busiest(Collection<Long> sites, Instant since) {
        Map<Long, Integer> busiest = new HashMap<>();
        if (!sites.isEmpty()) {
            sql.rows(
                    "select site_id, max(clients_mean) from quarter_site where site_id = any (?) and at >= ?"
                            + " group by site_id having max(clients_mean) is not null",
                    row -> busiest.put(row.getLong(1), (int) Math.round(row.getDouble(2))),
                    sites,
                    since);
        }
        return busiest;
    }
}
