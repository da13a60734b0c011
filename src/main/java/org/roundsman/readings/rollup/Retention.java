package org.roundsman.readings.rollup;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.readings.sql.Sql;
import org.roundsman.readings.store.Partitions;
import org.roundsman.system.Transaction;

/**
 * Drops partitions that are older than they need be. What still waits to be rolled up stays. Safe with several instances
 * on one database and any number of times.
 */
public final class Retention {

    private static final Logger LOG = Logger.getLogger(Retention.class);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("yyyyMM");

    private final DataSource source;
    private final Clock clock;
    private final int rawDays;
    private final int quarterMonths;

    /**
     * @param rawDays whole UTC days of raw readings to keep besides today
     * @param quarterMonths whole UTC months of quarter hours to keep besides this one
     */
    public Retention(DataSource source, Clock clock, int rawDays, int quarterMonths) {
        this.source = source;
        this.clock = clock;
        this.rawDays = rawDays;
        this.quarterMonths = quarterMonths;
    }

    /** Drops what is too old and returns the names of the dropped partitions. */
    public List<String> run() throws SQLException {
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        LocalDate firstDay = today.minusDays(rawDays);
        YearMonth firstMonth = YearMonth.from(today).minusMonths(quarterMonths);
        List<String> dropped = Transaction.run(
                source, connection -> lock(connection) ? drop(connection, firstDay, firstMonth) : List.of());
        dropped.forEach(name -> LOG.infof("dropped %s, which is past its time", name));
        return dropped;
    }

    private static List<String> drop(Connection connection, LocalDate firstDay, YearMonth firstMonth)
            throws SQLException {
        LocalDate from = earlier(firstDay, oldestMark(connection));
        List<String> dropped = new ArrayList<>();
        dropped.addAll(drop(connection, Partitions.DAILY, day -> day(day).isBefore(from)));
        dropped.addAll(drop(connection, Partitions.MONTHLY, month -> YearMonth.parse(month, MONTH)
                .isBefore(firstMonth)));
        if (!dropped.isEmpty()) {
            Sql.run(
                    connection,
                    "update readings_state set raw_since = greatest(raw_since, ?::timestamptz)",
                    Sql.time(from.atStartOfDay().toInstant(ZoneOffset.UTC)));
        }
        forgetDeleted(connection);
        return dropped;
    }

    private static LocalDate day(String basic) {
        return LocalDate.parse(basic, DateTimeFormatter.BASIC_ISO_DATE);
    }

    private static LocalDate earlier(LocalDate day, LocalDate other) {
        return other != null && other.isBefore(day) ? other : day;
    }

    private static boolean lock(Connection connection) throws SQLException {
        try (var statement = connection.createStatement()) {
            // whoever holds a partition too long makes us try again next time, rather than stop the writer behind us
            statement.execute("set local lock_timeout = '5s'");
            try (ResultSet row = statement.executeQuery("select pg_try_advisory_xact_lock(" + Partitions.LOCK + ")")) {
                row.next();
                return row.getBoolean(1);
            }
        }
    }

    private static LocalDate oldestMark(Connection connection) throws SQLException {
        try (var statement = connection.prepareStatement("select min(quarter) oldest from rollup_mark");
                ResultSet row = statement.executeQuery()) {
            row.next();
            return Sql.instant(row, "oldest")
                    .map(at -> LocalDate.ofInstant(at, ZoneOffset.UTC))
                    .orElse(null);
        }
    }

    private static List<String> drop(Connection connection, List<String> tables, Predicate<String> tooOld)
            throws SQLException {
        List<String> dropped = new ArrayList<>();
        for (String table : tables) {
            for (String partition : partitions(connection, table)) {
                String suffix = partition.substring(table.length() + 1);
                if (suffix.matches("\\d{6}|\\d{8}") && tooOld.test(suffix)) {
                    Sql.run(connection, "drop table " + partition);
                    dropped.add(partition);
                }
            }
        }
        return dropped;
    }

    private static List<String> partitions(Connection connection, String table) throws SQLException {
        List<String> names = new ArrayList<>();
        try (var statement =
                connection.prepareStatement("select c.relname from pg_inherits i join pg_class c on c.oid ="
                        + " i.inhrelid where i.inhparent = ?::regclass and c.relname like ? order by 1")) {
            Sql.fill(statement, table, table + "\\_%");
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    names.add(row.getString(1));
                }
            }
        }
        return names;
    }

    /** Rows outside the partitions that nobody can ask for any more. */
    private static void forgetDeleted(Connection connection) throws SQLException {
        for (String table : List.of("device_now", "span", "day_device", "day_radio", "day_network")) {
            Sql.run(
                    connection,
                    "delete from " + table + " t where not exists (select 1 from device d where d.id = t.device_id)");
        }
    }
}
