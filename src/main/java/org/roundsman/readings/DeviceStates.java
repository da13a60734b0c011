package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;
import org.roundsman.readings.sql.Sql;

/**
 * What the last rounds say, for those who watch the whole fleet. For the service itself: callers show nothing of it to
 * somebody without checking the customer scope. Thread-safe.
 */
@ApplicationScoped
public class DeviceStates {

    /** A device whose rounds were never answered may have a past that was loaded: its last answering span ended then. */
    private static final String SELECT = "select n.device_id, n.condition, n.since, n.misses, n.missing_since,"
            + " coalesce(n.last_answered_at, (select max(s.to_at) from span s where s.device_id = n.device_id and"
            + " s.condition = 1)) as last_answered_at, n.last_round_at, n.next_in_s, n.outcome, n.uptime, n.clients from"
            + " device_now n";

    private final DataSource source;

    @Inject
    public DeviceStates(DataSource source) {
        this.source = source;
    }

    /** Of every device that was ever visited, by device id. */
    public Map<Long, DeviceState> all() {
        return read(SELECT, connection -> new Object[0]);
    }

    /** Of these devices; one that was never visited has no entry. */
    public Map<Long, DeviceState> of(Collection<Long> deviceIds) {
        return read(
                SELECT + " where n.device_id = any(?)", connection -> new Object[] {Sql.ids(connection, deviceIds)});
    }

    /** Start of the last round of any device in the scope; empty before the first. */
    public Optional<Instant> lastRound(CustomerScope scope) {
        try (Connection connection = source.getConnection();
                var statement = connection.prepareStatement(
                        "select max(n.last_round_at) last_round_at from device_now n join device d on d.id ="
                                + " n.device_id join site s on s.id = d.site_id where ?::bigint is null or s.customer_id ="
                                + " ?")) {
            Sql.fill(statement, scope.onlyCustomer(), scope.onlyCustomer());
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? Sql.instant(row, "last_round_at") : Optional.empty();
            }
        } catch (SQLException e) {
            throw new IllegalStateException("The states of devices cannot be read: " + e.getMessage(), e);
        }
    }

    private interface Parameters {
        Object[] of(Connection connection) throws SQLException;
    }

    private Map<Long, DeviceState> read(String sql, Parameters parameters) {
        try (Connection connection = source.getConnection();
                var statement = connection.prepareStatement(sql)) {
            Sql.fill(statement, parameters.of(connection));
            Map<Long, DeviceState> states = new HashMap<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    DeviceState state = state(row);
                    states.put(state.deviceId(), state);
                }
            }
            return states;
        } catch (SQLException e) {
            throw new IllegalStateException("The states of devices cannot be read: " + e.getMessage(), e);
        }
    }

    private static DeviceState state(ResultSet row) throws SQLException {
        return new DeviceState(
                row.getLong("device_id"),
                Condition.ofCode(row.getInt("condition")),
                Sql.instant(row, "since").orElseThrow(),
                row.getInt("misses"),
                Sql.instant(row, "missing_since"),
                Sql.instant(row, "last_answered_at"),
                Sql.instant(row, "last_round_at").orElseThrow(),
                row.getInt("next_in_s"),
                Outcome.ofCode(row.getInt("outcome")),
                Sql.real(row, "uptime"),
                Sql.whole(row, "clients"));
    }
}
