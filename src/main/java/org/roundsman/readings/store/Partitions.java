package org.roundsman.readings.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.roundsman.system.Transaction;

/**
 * Partitions of the readings tables: a UTC day for raw readings, a UTC month for quarter hours. They are made on their
 * own, outside the transactions that fill them, and one maker at a time, also with several instances on one database.
 */
public final class Partitions {

    /** Advisory lock of whoever makes or drops partitions. */
    public static final long LOCK = 0x526f756e6473_01L;

    /** Tables cut by UTC day. */
    public static final List<String> DAILY = List.of("reading_device", "reading_radio", "reading_network");
    /** Tables cut by UTC month. */
    public static final List<String> MONTHLY =
            List.of("quarter_device", "quarter_radio", "quarter_network", "quarter_site");

    private static final DateTimeFormatter DAY = DateTimeFormatter.BASIC_ISO_DATE;
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("yyyyMM");

    private final DataSource source;
    private final Set<String> known = ConcurrentHashMap.newKeySet();

    public Partitions(DataSource source) {
        this.source = source;
    }

    /** Sees to it that readings of these times can be stored. */
    public void forReadings(Iterable<Instant> times) throws SQLException {
        Set<LocalDate> days = new HashSet<>();
        times.forEach(at -> days.add(LocalDate.ofInstant(at, ZoneOffset.UTC)));
        for (LocalDate day : days) {
            make(DAILY, day, day.plusDays(1), DAY.format(day));
        }
    }

    /** Sees to it that quarter hours of these times can be stored. */
    public void forQuarters(Iterable<Instant> times) throws SQLException {
        Set<LocalDate> months = new HashSet<>();
        times.forEach(at -> months.add(LocalDate.ofInstant(at, ZoneOffset.UTC).withDayOfMonth(1)));
        for (LocalDate month : months) {
            make(MONTHLY, month, month.plusMonths(1), MONTH.format(month));
        }
    }

    /** Forgets which partitions exist, since somebody may have dropped one. */
    public void forget() {
        known.clear();
    }

    /**
     * Brings the indexes on time up to date, in case the database's own maintenance has not come to it: without that, one
     * quarter hour costs a scan of its whole day.
     */
    public void summarise() throws SQLException {
        try (Connection connection = source.getConnection();
                var statement = connection.createStatement()) {
            statement.execute(
                    "select brin_summarize_new_values(c.oid) from pg_class c join pg_am a on a.oid = c.relam"
                            + " where a.amname = 'brin' and c.relkind = 'i' and c.relnamespace = current_schema()::regnamespace");
        }
    }

    private void make(List<String> tables, LocalDate from, LocalDate to, String suffix) throws SQLException {
        if (known.contains(tables.get(0) + suffix)) {
            return;
        }
        Transaction.run(source, connection -> {
            try (var statement = connection.createStatement()) {
                statement.execute("select pg_advisory_xact_lock(" + LOCK + ")");
            }
            for (String table : tables) {
                make(connection, table, table + "_" + suffix, from, to);
            }
            return null;
        });
        known.add(tables.get(0) + suffix);
    }

    /** Attaching locks the parent less than creating in place would. */
    private static void make(Connection connection, String table, String name, LocalDate from, LocalDate to)
            throws SQLException {
        try (var statement = connection.createStatement()) {
            try (var row = statement.executeQuery("select to_regclass('" + name + "')")) {
                row.next();
                if (row.getString(1) != null) {
                    return;
                }
            }
            statement.execute("create table " + name + " (like " + table + " including all)");
            statement.execute("alter table " + table + " attach partition " + name + " for values from ('" + from
                    + " 00:00+00') to ('" + to + " 00:00+00')");
        }
    }
}
