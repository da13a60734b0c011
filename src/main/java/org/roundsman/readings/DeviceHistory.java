package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.board.PastOfDevice;
import org.roundsman.readings.rollup.RolledTable;
import org.roundsman.readings.spans.Touched;

/**
 * What a device did over time. Callers check the customer scope through {@link FleetBoard#device} first. Series exist of
 * the metrics that are rolled up; asking for another one is an {@link IllegalArgumentException}.
 */
@ApplicationScoped
public class DeviceHistory {

    private final DataSource source;
    private final PlannedWork planned;

    @Inject
    public DeviceHistory(DataSource source, PlannedWork planned) {
        this.source = source;
        this.planned = planned;
    }

    /** The last reading that answered, from the raw readings that are kept; empty when there is none. */
    public Optional<Reading> lastAnswered(long deviceId) {
        return ask(connection -> new PastOfDevice(connection, deviceId).lastAnswered());
    }

    /** The metrics of a subject that have series. */
    public static List<Metric> withSeries(Subject subject) {
        return RolledTable.valueOf(subject.name()).metrics();
    }

    /**
     * The device's own figure, in quarter hours or, with a longer step, in buckets of whole quarter hours. Buckets begin
     * at the quarter hour that holds {@code from}.
     */
    public Series ofDevice(long deviceId, Metric metric, Instant from, Instant to, Duration step) {
        return series(deviceId, metric, Subject.DEVICE, null, from, to, step);
    }

    /** A radio's figure, in the same way. */
    public Series ofRadio(long deviceId, int number, Metric metric, Instant from, Instant to, Duration step) {
        return series(deviceId, metric, Subject.RADIO, number, from, to, step);
    }

    /** Clients of one network on this device, in the same way. */
    public Series ofNetwork(long deviceId, String ssid, Instant from, Instant to, Duration step) {
        return series(deviceId, Metric.NETWORK_CLIENTS, Subject.NETWORK, ssid, from, to, step);
    }

    /** Spans that overlap the time, ascending, not cut to it. */
    public List<Span> spans(long deviceId, Instant from, Instant to) {
        return ask(connection -> new PastOfDevice(connection, deviceId).spans(from, to));
    }

    /** How long the device was in each condition; planned work on it, its site or all sites of its customer is left out. */
    public Availability availability(long deviceId, Instant from, Instant to) {
        return ask(connection -> {
            PastOfDevice past = new PastOfDevice(connection, deviceId);
            return Availability.of(
                    past.spans(from, to), from, to, past.known().orElse(from), planned.ofDevice(deviceId, from, to));
        });
    }

    private Series series(
            long deviceId, Metric metric, Subject subject, Object part, Instant from, Instant to, Duration step) {
        if (!withSeries(subject).contains(metric)) {
            throw new IllegalArgumentException("no series of " + metric.key() + " for a " + subject);
        }
        if (step.toMillis() < Touched.QUARTER || step.toMillis() % Touched.QUARTER != 0) {
            throw new IllegalArgumentException("a step of " + step + " is not of whole quarter hours");
        }
        return ask(connection -> new Series(
                metric,
                (int) step.toSeconds(),
                new PastOfDevice(connection, deviceId).points(metric, part, from, to, step)));
    }

    private interface Question<T> {
        T answer(Connection connection) throws SQLException;
    }

    private <T> T ask(Question<T> question) {
        try (Connection connection = source.getConnection()) {
            return question.answer(connection);
        } catch (SQLException e) {
            throw new IllegalStateException("history cannot be read from the database: " + e.getMessage(), e);
        }
    }
}
