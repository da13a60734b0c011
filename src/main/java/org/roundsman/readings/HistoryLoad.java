package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Values;
import org.roundsman.readings.rollup.PastQuarters;
import org.roundsman.readings.spans.Touched;
import org.roundsman.readings.sql.Sql;
import org.roundsman.readings.store.Partitions;
import org.roundsman.system.Transaction;

/**
 * Writes readings of the past as quarter hours and spans, where raw readings never were: for demonstration data and for
 * moving in from elsewhere.
 */
@ApplicationScoped
public class HistoryLoad {

    private static final String EXISTS = "23505";

    private final DataSource source;
    private final Clock clock;
    private final Partitions partitions;

    @Inject
    public HistoryLoad(DataSource source, Clock clock) {
        this.source = source;
        this.clock = clock;
        this.partitions = new Partitions(source);
    }

    /**
     * One device in one quarter hour.
     *
     * @param samples how many readings the means stand for, 1 to 900
     * @param device mean figures of the device
     */
    public record DeviceQuarter(
            long deviceId,
            Instant at,
            int samples,
            Values device,
            List<RadioQuarter> radios,
            List<NetworkQuarter> networks) {}

    /** One radio in that quarter hour: mean figures and the highest clients and utilisation. */
    public record RadioQuarter(int number, Values mean, Values max) {}

    /** One network in that quarter hour. */
    public record NetworkQuarter(String ssid, Values mean) {}

    /** A closed span. */
    public record PastSpan(long deviceId, Instant from, Instant to, Condition condition) {}

    /**
     * Stores both in one transaction and rolls the touched sites up; a second load of the same rows changes nothing.
     * Quickest with a day of many devices at a time.
     *
     * @throws IllegalArgumentException for a time that is not a whole quarter hour or not before the first raw reading,
     *     or for a device that does not exist
     */
    @Transactional(Transactional.TxType.NOT_SUPPORTED)
    public void load(List<DeviceQuarter> quarters, List<PastSpan> spans) {
        check(quarters);
        try {
            Set<Instant> times = quarters.stream().map(DeviceQuarter::at).collect(Collectors.toSet());
            spans.forEach(span -> times.addAll(monthsOf(span)));
            partitions.forQuarters(times);
            checkBeforeRaw(quarters);
            try {
                load(quarters, spans, false);
            } catch (SQLException e) {
                if (!EXISTS.equals(e.getSQLState())) {
                    throw e;
                }
                load(quarters, spans, true);
            }
        } catch (SQLException e) {
            throw new IllegalStateException("history cannot be stored in the database: " + e.getMessage(), e);
        }
    }

    private static void check(List<DeviceQuarter> quarters) {
        for (DeviceQuarter quarter : quarters) {
            if (quarter.at().toEpochMilli() % Touched.QUARTER != 0) {
                throw new IllegalArgumentException(quarter.at() + " is not the start of a quarter hour");
            }
            if (quarter.samples() < 1 || quarter.samples() > 900) {
                throw new IllegalArgumentException(quarter.samples() + " samples in a quarter hour");
            }
        }
    }

    private static Set<Instant> monthsOf(PastSpan span) {
        Set<Instant> months = new HashSet<>(Set.of(span.to()));
        for (Instant at = span.from(); at.isBefore(span.to()); at = at.plus(Duration.ofDays(28))) {
            months.add(at);
        }
        return months;
    }

    private void checkBeforeRaw(List<DeviceQuarter> quarters) throws SQLException {
        Optional<Instant> last = quarters.stream().map(DeviceQuarter::at).max(Comparator.naturalOrder());
        if (last.isEmpty()) {
            return;
        }
        Instant end = last.get().plusMillis(Touched.QUARTER);
        try (Connection connection = source.getConnection();
                var statement = connection.prepareStatement(
                        "select at from reading_device where at < ?::timestamptz order by at limit 1")) {
            Sql.fill(statement, Sql.time(end));
            try (ResultSet row = statement.executeQuery()) {
                if (row.next()) {
                    throw new IllegalArgumentException("history up to " + end
                            + " is not before the first raw reading of " + Instant.ofEpochMilli(Sql.millis(row, "at")));
                }
            }
        }
    }

    private void load(List<DeviceQuarter> quarters, List<PastSpan> spans, boolean mayExist) throws SQLException {
        Transaction.run(source, connection -> {
            new PastQuarters(connection).load(quarters, spans, clock.instant(), mayExist);
            return null;
        });
    }
}
