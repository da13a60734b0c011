package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.readings.past.QuarterReader;
import org.roundsman.readings.past.RawReader;
import org.roundsman.system.Transaction;

/**
 * Goes through what is stored, reading by reading, for those who judge it as a whole. For the service itself: callers show
 * nothing of it to somebody without checking the customer scope. Thread-safe.
 */
@ApplicationScoped
public class PastReadings {

    /** Readings that are held at once, roughly: one a minute is assumed. */
    private static final long PORTION = 40_000;

    private static final int MOST_DEVICES = 1_000;

    private final DataSource source;

    @Inject
    public PastReadings(DataSource source) {
        this.source = source;
    }

    /** Who takes what is found. Told of a device's first raw reading, if there is one, before its readings. */
    public interface Taker extends Consumer<Reading> {

        /** Readings of that device from now on are raw ones; before, they were made from quarter hours. */
        default void raw(long deviceId, Instant from) {}

        /** So many devices are done. */
        default void done(int devices) {}
    }

    /** The raw readings of these devices from a time on and before another, without facts. Device by device, in time order. */
    public void raw(Collection<Long> devices, Instant from, Instant to, Taker taker) {
        inPortions(devices, from, to, () -> false, (portion, connection) -> {
            new RawReader(connection, from, to).each(portion, EnumSet.allOf(Subject.class), taker);
            taker.done(portion.size());
        });
    }

    /**
     * The same, and for the time before a device's first raw reading what its quarter hours tell: for each one reading at
     * its begin and one at its end, with the means of what is rolled up.
     *
     * @param parts what is wanted besides the device's own figures
     * @param stop asked between portions of devices: true ends it early
     */
    public void all(
            Collection<Long> devices, Instant from, Instant to, Set<Subject> parts, BooleanSupplier stop, Taker taker) {
        inPortions(devices, from, to, stop, (portion, connection) -> {
            RawReader raw = new RawReader(connection, from, to);
            Map<Long, Instant> firsts = raw.firsts(portion);
            for (long device : portion) {
                List<Long> one = List.of(device);
                new QuarterReader(connection, from, to).each(one, parts, firsts, taker);
                if (firsts.containsKey(device)) {
                    taker.raw(device, firsts.get(device));
                    raw.each(one, parts, taker);
                }
                taker.done(1);
            }
        });
    }

    private interface Portion {
        void read(List<Long> devices, java.sql.Connection connection) throws SQLException;
    }

    private void inPortions(Collection<Long> devices, Instant from, Instant to, BooleanSupplier stop, Portion work) {
        long each = Math.max(1, Duration.between(from, to).toMinutes());
        int size = (int) Math.max(1, Math.min(MOST_DEVICES, PORTION / each));
        List<Long> all = new ArrayList<>(devices);
        for (int i = 0; i < all.size() && !stop.getAsBoolean(); i += size) {
            List<Long> portion = all.subList(i, Math.min(all.size(), i + size));
            try {
                Transaction.run(source, connection -> {
                    work.read(portion, connection);
                    return null;
                });
            } catch (SQLException e) {
                throw new IllegalStateException("Past readings could not be read: " + e.getMessage(), e);
            }
        }
    }
}
