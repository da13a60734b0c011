package org.roundsman.readings;

import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.roundsman.measure.Band;
import org.roundsman.readings.sql.Sql;
import org.roundsman.system.Transaction;

/**
 * The quarter hours of many radios over a long stretch of the past. For the service itself: callers check the customer scope.
 * Thread-safe.
 *
 * <p>Radios come with their figures in two arrays: a row of arrays costs a fraction of the thousands of rows that it stands for.
 * They are asked for by some devices at a time, since those of one site lie side by side, and both sides hold only as many
 * figures.
 */
public final class PastRadios {

    private static final int AT_ONCE = 40;

    /** See {@link PastCrowds}: the planner is not to count the devices. */
    private static final String QUARTERS = """
        select q.device_id, q.number,
               array_agg(q.utilisation_mean) filter (where q.utilisation_n > 0) as utilisation,
               array_agg(q.clients_mean) filter (where q.clients_n > 0) as clients
          from quarter_radio q
         where q.device_id = any ((select array_agg(x) from unnest(?::bigint[]) x)::bigint[])
           and q.at >= ?::timestamptz and q.at < ?::timestamptz
         group by q.device_id, q.number
         order by q.device_id, q.number
        """;

    /** Raw readings are cut by day: one by one, each device's last answer is looked up in the one part that holds it. */
    private static final String KNOWN = """
        select r.device_id, r.number, null::float8 as band from radio r where r.device_id = any (?)
        union all
        select n.device_id, x.number, x.band::float8
          from device_now n
         cross join lateral (
               select r.number, r.band from reading_radio r
                where r.device_id = n.device_id and r.at = n.last_answered_at offset 0) x
         where n.device_id = any (?)
        """;

    private final DataSource source;

    public PastRadios(DataSource source) {
        this.source = source;
    }

    /** Takes the radios, those of a device one after the other, by number. */
    public interface Taker {
        /**
         * One radio that has quarter hours.
         *
         * @param utilisation means of the quarter hours with a figure, in any order
         * @param clients means of the quarter hours with a figure, in any order
         */
        void radio(long deviceId, int number, double[] utilisation, double[] clients);
    }

    /**
     * Hands over every radio that has quarter hours in the stretch.
     *
     * @param from begin of a quarter hour
     * @param to end, exclusive
     */
    public void each(Collection<Long> deviceIds, Instant from, Instant to, Taker taker) {
        try {
            Transaction.run(source, connection -> {
                Sql.planEachTime(connection);
                List<Long> all = List.copyOf(deviceIds);
                for (int i = 0; i < all.size(); i += AT_ONCE) {
                    some(connection, all.subList(i, Math.min(all.size(), i + AT_ONCE)), from, to, taker);
                }
                return null;
            });
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private static void some(Connection connection, List<Long> devices, Instant from, Instant to, Taker taker)
            throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(QUARTERS)) {
            Sql.fill(statement, Sql.ids(connection, devices), Sql.time(from), Sql.time(to));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    taker.radio(
                            row.getLong("device_id"),
                            row.getInt("number"),
                            figures(row, "utilisation"),
                            figures(row, "clients"));
                }
            }
        }
    }

    private static double[] figures(ResultSet row, String column) throws SQLException {
        Array array = row.getArray(column);
        if (array == null) {
            return new double[0];
        }
        Number[] stored = (Number[]) array.getArray();
        double[] figures = new double[stored.length];
        for (int i = 0; i < stored.length; i++) {
            figures[i] = stored[i].doubleValue();
        }
        return figures;
    }

    /** The radios that each device has, with the band in GHz that its last answer told; empty where it did not. */
    public Map<Long, SortedMap<Integer, OptionalDouble>> known(Collection<Long> deviceIds) {
        Map<Long, SortedMap<Integer, OptionalDouble>> known = new HashMap<>();
        try (Connection connection = source.getConnection();
                PreparedStatement statement = connection.prepareStatement(KNOWN)) {
            Sql.fill(statement, Sql.ids(connection, deviceIds), Sql.ids(connection, deviceIds));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    known.computeIfAbsent(row.getLong("device_id"), made -> new TreeMap<>())
                            .merge(row.getInt("number"), band(row), (one, other) -> one.isPresent() ? one : other);
                }
            }
            return known;
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    /** Stored in four octets, 2.4 comes back as a little more. */
    private static OptionalDouble band(ResultSet row) throws SQLException {
        OptionalDouble stored = Sql.real(row, "band");
        return stored.isEmpty()
                ? stored
                : Band.of(stored.getAsDouble()).stream()
                        .mapToDouble(Band::gigahertz)
                        .findFirst();
    }

    private static IllegalStateException failed(SQLException e) {
        return new IllegalStateException("past radios cannot be read from the database: " + e.getMessage(), e);
    }
}
