package org.roundsman.readings.rollup;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javax.sql.DataSource;
import org.roundsman.readings.sql.Sql;
import org.roundsman.readings.store.Partitions;
import org.roundsman.system.Transaction;

/**
 * Builds quarter hours and days of whatever the writer marked, and of nothing else. A quarter is always built whole from
 * the raw readings, so that late ones come right and a second run changes nothing. One run at a time, also with several
 * instances on one database.
 */
public final class RollUp {

    static final Duration QUARTER = Duration.ofMinutes(15);
    private static final long LOCK = 0x526f756e6473_02L;
    private static final int QUARTERS_A_TURN = 32;
    private static final int DAYS_A_TURN = 500;

    private final DataSource source;
    private final Clock clock;
    private final Partitions partitions;
    private final Duration currentDayEvery;

    /** @param currentDayEvery how long a day that goes on is left alone after it was marked */
    public RollUp(DataSource source, Clock clock, Duration currentDayEvery) {
        this.source = source;
        this.clock = clock;
        this.partitions = new Partitions(source);
        this.currentDayEvery = currentDayEvery;
    }

    /** Builds what is marked and due; returns how many quarter hours that were. */
    public int run() throws SQLException {
        int built = 0;
        int turn = QUARTERS_A_TURN;
        while (turn == QUARTERS_A_TURN) {
            turn = quarters();
            built += turn;
        }
        int days = DAYS_A_TURN;
        while (days == DAYS_A_TURN) {
            days = days();
        }
        return built;
    }

    private int quarters() throws SQLException {
        Set<Instant> marked = marked();
        if (marked.isEmpty()) {
            return 0;
        }
        partitions.forget();
        partitions.forQuarters(marked);
        return locked(connection -> {
            Instant rawSince = rawSince(connection);
            Sql.run(
                    connection,
                    "delete from rollup_mark where quarter = any (?)",
                    Sql.times(
                            connection,
                            marked.stream().map(Instant::toEpochMilli).toList()));
            for (Instant quarter : marked) {
                var start = Sql.time(quarter);
                boolean anew = !quarter.isBefore(rawSince);
                for (RolledTable table : RolledTable.values()) {
                    Sql.run(connection, table.quarterFromRaw(anew), start, start, Sql.time(quarter.plus(QUARTER)));
                }
                SiteQuarters.build(connection, quarter, quarter.plus(QUARTER), clock.instant(), null);
            }
            markDays(connection, marked);
            return marked.size();
        });
    }

    /** The newest first, since the present is looked at most. */
    private Set<Instant> marked() throws SQLException {
        Set<Instant> marked = new TreeSet<>();
        try (Connection connection = source.getConnection();
                var statement = connection.prepareStatement(
                        "select distinct quarter from rollup_mark order by quarter desc limit " + QUARTERS_A_TURN);
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                marked.add(row.getObject(1, OffsetDateTime.class).toInstant());
            }
        }
        return marked;
    }

    private static Instant rawSince(Connection connection) throws SQLException {
        try (var statement = connection.prepareStatement("select raw_since from readings_state");
                ResultSet row = statement.executeQuery()) {
            row.next();
            return Sql.instant(row, "raw_since").orElse(Instant.MIN);
        }
    }

    private void markDays(Connection connection, Set<Instant> quarters) throws SQLException {
        Instant now = clock.instant();
        try (var statement = connection.prepareStatement(
                "insert into day_mark (site_id, day, due_at) values (?, ?, ?) on conflict (site_id, day) do nothing")) {
            for (Days.SiteDay day : Days.of(Days.zones(connection), quarters)) {
                statement.setLong(1, day.siteId());
                statement.setObject(2, day.day());
                statement.setObject(3, Sql.time(day.to().isAfter(now) ? now.plus(currentDayEvery) : now));
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    private int days() throws SQLException {
        return locked(connection -> {
            var zones = Days.zones(connection);
            List<Days.SiteDay> due = new ArrayList<>();
            try (var statement = connection.prepareStatement("delete from day_mark where (site_id, day) in"
                    + " (select site_id, day from day_mark where due_at <= ? limit " + DAYS_A_TURN
                    + ") returning site_id, day")) {
                Sql.fill(statement, Sql.time(clock.instant()));
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        long site = row.getLong(1);
                        if (zones.containsKey(site)) {
                            due.add(new Days.SiteDay(site, row.getObject(2, LocalDate.class), zones.get(site)));
                        }
                    }
                }
            }
            Days.build(connection, due);
            return due.size();
        });
    }

    /** Does the work in one transaction, or nothing when another instance is at it. */
    private int locked(Transaction.Work<Integer> work) throws SQLException {
        return Transaction.run(source, connection -> lock(connection) ? work.on(connection) : 0);
    }

    private static boolean lock(Connection connection) throws SQLException {
        try (var statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select pg_try_advisory_xact_lock(" + LOCK + ")")) {
            row.next();
            return row.getBoolean(1);
        }
    }
}
