package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.readings.sql.Sql;

/**
 * What clients devices had in quarter hours of the past, by what networks are for. A fixed number of statements, whatever
 * the number of devices. For the service itself: callers check the customer scope. Thread-safe.
 */
@ApplicationScoped
public class PastClients {

    /** A quarter hour in which the device was silent for a part tells too little of who was there. */
    private static final String ALL = """
        select q.device_id, q.at, q.clients_mean from quarter_device q
         where %s and q.clients_n > 0
           and not exists (select 1 from span s where s.device_id = q.device_id and s.condition = 2
                and s.from_at < q.at + interval '15 minutes' and (s.to_at is null or s.to_at > q.at))
        """;

    /** Added up in eight octets, so that the sum does not depend on the order of the rows. */
    private static final String NETWORKS = """
        select q.device_id, q.at, n.purpose, sum(q.clients_mean::double precision) as clients
          from quarter_network q join network n on n.id = q.network_id
         where %s and q.clients_n > 0
           and q.network_id = any (array (
                select o.id from network o where o.site_id in (select d.site_id from device d where d.id = any (?))))
         group by q.device_id, q.at, n.purpose
        """;

    /** The same quarter hours of each device. */
    private static final String EACH = "q.device_id = any (?) and q.at = any (?)";

    /** Each device in its own quarter hours; the bounds spare looking at other partitions. */
    private static final String PAIRS =
            "(q.device_id, q.at) in (select * from unnest (?::bigint[], ?::timestamptz[])) and q.at between ? and ?";

    private final DataSource source;

    @Inject
    public PastClients(DataSource source) {
        this.source = source;
    }

    /**
     * One quarter hour of one device: mean clients.
     *
     * @param other on networks for neither, and those whose network is not known
     */
    public record Quarter(long deviceId, Instant at, double staff, double guest, double other) {}

    /** One device in the quarter hour that begins then. */
    public record Spot(long deviceId, Instant at) {}

    /** Makes the parameters of a condition. */
    private interface Parameters {
        Object[] of(Connection connection) throws SQLException;
    }

    /**
     * The quarter hours that have figures, without those in which the device was silent for a part.
     *
     * @param quarters starts of quarter hours
     */
    public List<Quarter> of(Collection<Long> deviceIds, Collection<Instant> quarters) {
        if (deviceIds.isEmpty() || quarters.isEmpty()) {
            return List.of();
        }
        return read(
                EACH,
                connection -> new Object[] {Sql.ids(connection, deviceIds), times(connection, quarters)},
                deviceIds);
    }

    /** The same of each device in quarter hours of its own. */
    public List<Quarter> at(Collection<Spot> spots) {
        if (spots.isEmpty()) {
            return List.of();
        }
        List<Long> devices = spots.stream().map(Spot::deviceId).toList();
        List<Instant> quarters = spots.stream().map(Spot::at).toList();
        return read(
                PAIRS,
                connection -> new Object[] {
                    Sql.ids(connection, devices),
                    times(connection, quarters),
                    Sql.time(Collections.min(quarters)),
                    Sql.time(Collections.max(quarters))
                },
                new HashSet<>(devices));
    }

    private List<Quarter> read(String which, Parameters parameters, Collection<Long> deviceIds) {
        try (Connection connection = source.getConnection()) {
            Map<Spot, Map<String, Double>> networks = networks(connection, which, parameters, deviceIds);
            List<Quarter> found = new ArrayList<>();
            try (var statement = connection.prepareStatement(ALL.formatted(which))) {
                Sql.fill(statement, parameters.of(connection));
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        Spot spot = spot(row);
                        found.add(quarter(spot, row.getDouble("clients_mean"), networks.getOrDefault(spot, Map.of())));
                    }
                }
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException("Past clients cannot be read: " + e.getMessage(), e);
        }
    }

    private static Map<Spot, Map<String, Double>> networks(
            Connection connection, String which, Parameters parameters, Collection<Long> deviceIds)
            throws SQLException {
        Map<Spot, Map<String, Double>> networks = new HashMap<>();
        List<Object> all = new ArrayList<>(Arrays.asList(parameters.of(connection)));
        all.add(Sql.ids(connection, deviceIds));
        try (var statement = connection.prepareStatement(NETWORKS.formatted(which))) {
            Sql.fill(statement, all.toArray());
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    networks.computeIfAbsent(spot(row), made -> new HashMap<>())
                            .merge(row.getString("purpose"), row.getDouble("clients"), Double::sum);
                }
            }
        }
        return networks;
    }

    private static java.sql.Array times(Connection connection, Collection<Instant> quarters) throws SQLException {
        return Sql.times(
                connection, quarters.stream().map(Instant::toEpochMilli).toList());
    }

    private static Spot spot(ResultSet row) throws SQLException {
        return new Spot(row.getLong("device_id"), Sql.instant(row, "at").orElseThrow());
    }

    /** The device counts its clients; what its networks do not account for is of a network that is not known. */
    private static Quarter quarter(Spot spot, double all, Map<String, Double> networks) {
        double staff = networks.getOrDefault("staff", 0.0);
        double guest = networks.getOrDefault("guest", 0.0);
        double other = networks.getOrDefault("other", 0.0);
        double unknown = Math.max(0, all - staff - guest - other);
        return new Quarter(spot.deviceId(), spot.at(), staff, guest, other + unknown);
    }
}
