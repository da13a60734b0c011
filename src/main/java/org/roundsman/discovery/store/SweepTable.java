package org.roundsman.discovery.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.discovery.Sweep;
import org.roundsman.discovery.SweepState;

/** The sweeps, and what became of their addresses. */
@ApplicationScoped
public class SweepTable {

    /** Stored for an address that was set aside and not asked. */
    public static final int LEFT_OUT = -1;

    private static final String ALL = "select id, site_id, state, ranges, ports, credentials, total, started_by,"
            + " started_at, ended_at, remark from sweep ";

    private final Tables tables;

    @Inject
    public SweepTable(Tables tables) {
        this.tables = tables;
    }

    /**
     * Stores a new sweep, whose id does not count, and forgets what older ones of the site found.
     *
     * @return its id; empty when another one of the site is running
     */
    public Optional<Long> add(Sweep sweep) {
        for (String table : List.of("sweep_finding", "sweep_address")) {
            tables.run(
                    "delete from " + table + " where sweep_id in (select id from sweep where site_id = ?)",
                    sweep.siteId());
        }
        return tables
                .list(
                        "insert into sweep (site_id, state, ranges, ports, credentials, total, started_by, started_at,"
                                + " remark) values (?, ?, ?, ?, ?, ?, ?, ?, ?)"
                                + " on conflict (site_id) where state = 'RUNNING' do nothing returning id",
                        row -> row.getLong(1),
                        sweep.siteId(),
                        sweep.state().name(),
                        sweep.ranges(),
                        sweep.ports(),
                        sweep.credentials(),
                        sweep.total(),
                        sweep.startedBy(),
                        time(sweep.startedAt()),
                        sweep.remark())
                .stream()
                .findFirst();
    }

    public Optional<Sweep> find(long id) {
        return tables.list(ALL + "where id = ?", SweepTable::sweep, id).stream().findFirst();
    }

    /** The latest sweeps of a site, newest first. */
    public List<Sweep> latest(long siteId, int most) {
        return tables.list(ALL + "where site_id = ? order by id desc limit ?", SweepTable::sweep, siteId, most);
    }

    /** Those that have not ended, oldest first. */
    public List<Sweep> running() {
        return tables.list(ALL + "where state = 'RUNNING' order by id", SweepTable::sweep);
    }

    /** Whether it was in that state, and now is in the other. */
    public boolean turn(long id, SweepState from, SweepState to, Instant at) {
        return tables.run(
                        "update sweep set state = ?, ended_at = ? where id = ? and state = ?",
                        to.name(),
                        to == SweepState.RUNNING ? null : time(at),
                        id,
                        from.name())
                == 1;
    }

    public void remark(long id, String remark) {
        tables.run("update sweep set remark = ? where id = ?", remark, id);
    }

    /** What became of the addresses that are done, by place: codes of outcomes, or {@link #LEFT_OUT}. */
    public Map<Integer, Integer> done(long id) {
        Map<Integer, Integer> done = new HashMap<>();
        tables.list(
                "select place, outcome from sweep_address where sweep_id = ?",
                row -> done.put(row.getInt(1), row.getInt(2)),
                id);
        return done;
    }

    /** How many addresses had which outcome. */
    public Map<Integer, Integer> counts(long id) {
        Map<Integer, Integer> counts = new HashMap<>();
        tables.list(
                "select outcome, count(*) from sweep_address where sweep_id = ? group by outcome",
                row -> counts.put(row.getInt(1), row.getInt(2)),
                id);
        return counts;
    }

    private static Sweep sweep(ResultSet row) throws SQLException {
        OffsetDateTime ended = row.getObject("ended_at", OffsetDateTime.class);
        return new Sweep(
                row.getLong("id"),
                row.getLong("site_id"),
                SweepState.valueOf(row.getString("state")),
                row.getString("ranges"),
                Tables.integers(row, "ports"),
                Tables.longs(row, "credentials"),
                row.getInt("total"),
                row.getString("started_by"),
                row.getObject("started_at", OffsetDateTime.class).toInstant(),
                Optional.ofNullable(ended).map(OffsetDateTime::toInstant),
                row.getString("remark"));
    }

    static OffsetDateTime time(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
