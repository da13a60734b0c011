package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;
import org.roundsman.readings.sql.Sql;

/**
 * Condition spans of many devices at once. For the service itself: callers check the customer scope. Thread-safe.
 */
@ApplicationScoped
public class PastSpans {

    private static final String SELECT = """
        select s.device_id, s.from_at, s.condition, s.outcome,
               coalesce(s.to_at, n.last_round_at + n.next_in_s * interval '1 second') as to_at
          from span s left join device_now n on n.device_id = s.device_id
         where s.device_id = any (?) and s.from_at < ? and (s.to_at is null or s.to_at > ?)
         order by s.device_id, s.from_at
        """;

    private final DataSource source;

    @Inject
    public PastSpans(DataSource source) {
        this.source = source;
    }

    /**
     * Spans that overlap the time, ascending, not cut to it; one that still goes on ends where it is known to: when the
     * device's next round is due. A device without any has no entry.
     */
    public Map<Long, List<Span>> of(Collection<Long> deviceIds, Instant from, Instant to) {
        if (deviceIds.isEmpty()) {
            return Map.of();
        }
        try (Connection connection = source.getConnection();
                var statement = connection.prepareStatement(SELECT)) {
            Sql.fill(statement, Sql.ids(connection, deviceIds), Sql.time(to), Sql.time(from));
            Map<Long, List<Span>> spans = new HashMap<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    spans.computeIfAbsent(row.getLong("device_id"), made -> new ArrayList<>())
                            .add(span(row));
                }
            }
            return spans;
        } catch (SQLException e) {
            throw new IllegalStateException("Spans cannot be read: " + e.getMessage(), e);
        }
    }

    private static Span span(ResultSet row) throws SQLException {
        Optional<Outcome> outcome = Sql.whole(row, "outcome").isPresent()
                ? Optional.of(Outcome.ofCode(row.getInt("outcome")))
                : Optional.empty();
        return new Span(
                Sql.instant(row, "from_at").orElseThrow(),
                Sql.instant(row, "to_at"),
                Condition.ofCode(row.getInt("condition")),
                outcome);
    }
}
