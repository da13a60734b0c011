package org.roundsman.readings;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.readings.sql.Sql;
import org.roundsman.system.Transaction;

/**
 * Clients of many access points together, in every quarter hour of a long stretch of the past. One statement for each stretch,
 * which returns one row for each quarter hour. For the service itself: callers check the customer scope. Thread-safe.
 *
 * <p>Means are stored in four octets and added up in eight, so that their sum does not depend on the order of the rows.
 */
public final class PastCrowds {

    /**
     * The devices come as the answer to a question of their own: of a list that it can count, the planner thinks that reading the
     * whole month of everybody is quicker, and is wrong by a factor of ten.
     */
    private static final String OF_DEVICES = """
        with wanted as materialized (select array_agg(x) as ids from unnest(?::bigint[]) x),
        own as (
            select q.at, sum(q.clients_mean::float8) as clients
              from quarter_device q
             where q.device_id = any ((select ids from wanted)::bigint[])
               and q.at >= ?::timestamptz and q.at < ?::timestamptz and q.clients_n > 0
             group by q.at),
        named as (
            select g.at,
                   sum(g.clients) filter (where n.purpose = 'staff') as staff,
                   sum(g.clients) filter (where n.purpose = 'guest') as guest
              from (select q.at, q.network_id, sum(q.clients_mean::float8) as clients
                      from quarter_network q
                     where q.device_id = any ((select ids from wanted)::bigint[])
                       and q.at >= ?::timestamptz and q.at < ?::timestamptz and q.clients_n > 0
                     group by q.at, q.network_id offset 0) g
              join network n on n.id = g.network_id
             where n.purpose in ('staff', 'guest')
             group by g.at)
        select own.at, own.clients, coalesce(named.staff, 0) as staff, coalesce(named.guest, 0) as guest
          from own left join named on named.at = own.at
         order by own.at
        """;

    /** The site's own roll-up: one narrow row a quarter hour, where the devices' are wide and many. */
    private static final String OF_SITE = """
        select q.at, q.clients_mean::float8 as clients, 0::float8 as staff, 0::float8 as guest
          from quarter_site q
         where q.site_id = ? and q.at >= ?::timestamptz and q.at < ?::timestamptz and q.clients_mean is not null
         order by q.at
        """;

    private final DataSource source;

    public PastCrowds(DataSource source) {
        this.source = source;
    }

    /**
     * One quarter hour: the mean clients of all devices with a figure.
     *
     * @param staff of them on networks for staff
     * @param guest of them on networks for guests
     */
    public record Quarter(Instant at, double clients, double staff, double guest) {

        /** On networks for neither, and those whose network is not known; never below zero. */
        public double other() {
            return Math.max(0, clients - staff - guest);
        }
    }

    /**
     * The quarter hours in which one of the devices has a figure, ascending.
     *
     * @param from begin of a quarter hour
     * @param to end, exclusive
     */
    public List<Quarter> ofDevices(Collection<Long> deviceIds, Instant from, Instant to) {
        if (deviceIds.isEmpty()) {
            return List.of();
        }
        try {
            return Transaction.run(source, connection -> {
                Sql.planEachTime(connection);
                var ids = Sql.ids(connection, deviceIds);
                return read(connection, OF_DEVICES, ids, Sql.time(from), Sql.time(to), Sql.time(from), Sql.time(to));
            });
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    /**
     * The same of all access points that the site had at that time, quicker and without telling networks apart: whoever was
     * there counts as on another network.
     */
    public List<Quarter> ofSite(long siteId, Instant from, Instant to) {
        try (Connection connection = source.getConnection()) {
            return read(connection, OF_SITE, siteId, Sql.time(from), Sql.time(to));
        } catch (SQLException e) {
            throw failed(e);
        }
    }

    private static List<Quarter> read(Connection connection, String sql, Object... parameters) throws SQLException {
        List<Quarter> quarters = new ArrayList<>();
        try (var statement = connection.prepareStatement(sql)) {
            Sql.fill(statement, parameters);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    quarters.add(new Quarter(
                            Instant.ofEpochMilli(Sql.millis(row, "at")),
                            row.getDouble("clients"),
                            row.getDouble("staff"),
                            row.getDouble("guest")));
                }
            }
        }
        return quarters;
    }

    private static IllegalStateException failed(SQLException e) {
        return new IllegalStateException("past clients cannot be read from the database: " + e.getMessage(), e);
    }
}
