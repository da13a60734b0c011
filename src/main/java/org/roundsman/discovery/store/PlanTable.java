package org.roundsman.discovery.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Array;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.roundsman.discovery.Aside;
import org.roundsman.discovery.SweepPlan;

/** What people enter for the sweeps of a site. */
@ApplicationScoped
public class PlanTable {

    private final Tables tables;

    @Inject
    public PlanTable(Tables tables) {
        this.tables = tables;
    }

    public SweepPlan of(long siteId) {
        return tables
                .list(
                        "select ranges, ports, credentials from sweep_plan where site_id = ?",
                        row -> {
                            Array chosen = row.getArray("credentials");
                            return new SweepPlan(
                                    row.getString("ranges"),
                                    Tables.integers(row, "ports"),
                                    chosen == null,
                                    chosen == null ? List.of() : Tables.longs(row, "credentials"));
                        },
                        siteId)
                .stream()
                .findFirst()
                .orElseGet(SweepPlan::blank);
    }

    public void save(long siteId, SweepPlan plan) {
        tables.run(
                "insert into sweep_plan (site_id, ranges, ports, credentials) values (?, ?, ?, ?) on conflict (site_id)"
                        + " do update set ranges = excluded.ranges, ports = excluded.ports,"
                        + " credentials = excluded.credentials",
                siteId,
                plan.ranges(),
                plan.ports(),
                plan.all() ? null : plan.credentials());
    }

    /** What was set aside at the site, by address. */
    public List<Aside> asides(long siteId) {
        return tables.list(
                "select host, port, said_by, at from sweep_aside where site_id = ? order by host, port",
                row -> new Aside(
                        row.getString("host"),
                        row.getInt("port"),
                        row.getString("said_by"),
                        row.getObject("at", OffsetDateTime.class).toInstant()),
                siteId);
    }

    public void setAside(long siteId, String host, int port, String by, Instant at) {
        tables.run(
                "insert into sweep_aside (site_id, host, port, said_by, at) values (?, ?, ?, ?, ?) on conflict do nothing",
                siteId,
                host,
                port,
                by,
                SweepTable.time(at));
    }

    /** Whether it was set aside, and now is not. */
    public boolean takeBack(long siteId, String host, int port) {
        return tables.run("delete from sweep_aside where site_id = ? and host = ? and port = ?", siteId, host, port)
                == 1;
    }
}
