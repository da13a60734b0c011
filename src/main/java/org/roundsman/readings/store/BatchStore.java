package org.roundsman.readings.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.fleet.FactStore;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Reading;
import org.roundsman.readings.spans.Round;
import org.roundsman.readings.spans.SpanTracker;
import org.roundsman.readings.spans.Touched;
import org.roundsman.readings.sql.CopyRows;
import org.roundsman.readings.sql.Sql;
import org.roundsman.system.Transaction;
import org.roundsman.timeline.DeviceEvents;

/**
 * Stores a batch of readings with all that follows from it in one transaction: raw rows, spans, last rounds, facts and
 * marks for the roll-ups. A reading whose key is stored already changes nothing. Used by one thread.
 */
public final class BatchStore {

    /** SQLSTATE unique_violation (PostgreSQL manual, appendix A). */
    private static final String EXISTS = "23505";

    private final DataSource source;
    private final Partitions partitions;
    private final DeviceDirectory directory;
    private final SpanTracker spans = new SpanTracker();
    private final FactStore facts = new FactStore();
    private final Restarts restarts = new Restarts();

    public BatchStore(DataSource source, Clock clock) {
        this.source = source;
        this.partitions = new Partitions(source);
        this.directory = new DeviceDirectory(clock);
    }

    /**
     * What became of a batch.
     *
     * @param readings stored as new
     * @param known stored before
     * @param unknownDevice of devices that do not exist (any more)
     * @param rows copied into the raw tables
     */
    public record Stored(int readings, int known, int unknownDevice, int rows) {
        Stored plus(Stored other) {
            return new Stored(
                    readings + other.readings,
                    known + other.known,
                    unknownDevice + other.unknownDevice,
                    rows + other.rows);
        }
    }

    /** Stores all of it or nothing. */
    public Stored store(List<Reading> batch) throws SQLException {
        partitions.forReadings(batch.stream().map(Reading::at).collect(Collectors.toSet()));
        try {
            return store(batch, false);
        } catch (SQLException e) {
            if (!EXISTS.equals(e.getSQLState())) {
                throw e;
            }
            return store(batch, true);
        }
    }

    /** Forgets everything that was remembered from the database, since it may have changed. */
    public void forget() {
        partitions.forget();
        directory.forget();
        afresh();
    }

    private void afresh() {
        spans.forget();
        facts.forget();
        restarts.forget();
    }

    private Stored store(List<Reading> batch, boolean mayExist) throws SQLException {
        boolean committed = false;
        try {
            Work work = Transaction.run(source, connection -> new Work(connection, batch).run(mayExist));
            committed = true;
            work.committed();
            return work.stored;
        } finally {
            if (!committed) {
                afresh();
            }
        }
    }

    /** One transaction. */
    private final class Work {
        private final Connection connection;
        private final List<Reading> batch;
        private SpanTracker.Tracked tracked;
        private Stored stored;

        Work(Connection connection, List<Reading> batch) {
            this.connection = connection;
            this.batch = batch;
        }

        Work run(boolean mayExist) throws SQLException {
            Map<Long, Long> sites = directory.sites(
                    connection, batch.stream().map(Reading::deviceId).collect(Collectors.toSet()));
            List<Reading> known = batch.stream()
                    .filter(reading -> sites.containsKey(reading.deviceId()))
                    .toList();
            List<Reading> fresh = once(known);
            fresh = mayExist ? copyDevicesNew(fresh) : copyDevices(fresh);
            CopyRows radios = RawTables.radios(fresh);
            RawTables.RADIO.copy(connection, radios);
            CopyRows networks = RawTables.networks(fresh, sites, this::network);
            RawTables.NETWORK.copy(connection, networks);
            if (!fresh.isEmpty()) {
                follow(fresh, sites);
            }
            stored = new Stored(
                    fresh.size(),
                    known.size() - fresh.size(),
                    batch.size() - known.size(),
                    fresh.size() + radios.rows() + networks.rows());
            return this;
        }

        private int network(long siteId, String ssid) throws SQLException {
            return facts.networkId(connection, siteId, ssid);
        }

        private List<Reading> copyDevices(List<Reading> readings) throws SQLException {
            RawTables.DEVICE.copy(connection, RawTables.devices(readings));
            return readings;
        }

        private List<Reading> copyDevicesNew(List<Reading> readings) throws SQLException {
            Map<Key, Reading> byKey = new LinkedHashMap<>();
            readings.forEach(reading -> byKey.put(Key.of(reading), reading));
            RawTables.DEVICE.stage(connection, RawTables.devices(readings));
            List<Reading> fresh = new ArrayList<>();
            try (var statement = connection.createStatement();
                    var row = statement.executeQuery(RawTables.DEVICE.insertNew() + " returning device_id, at")) {
                while (row.next()) {
                    fresh.add(byKey.get(new Key(row.getLong(1), Sql.millis(row, "at"))));
                }
            }
            return fresh;
        }

        private void follow(List<Reading> fresh, Map<Long, Long> sites) throws SQLException {
            tracked = spans.track(connection, rounds(fresh));
            DeviceEvents.add(connection, restarts.find(connection, fresh));
            DeviceNow.write(connection, tracked.states(), fresh);
            for (Reading reading : inOrder(fresh)) {
                if (reading.facts().isPresent()) {
                    facts.store(
                            connection,
                            reading.deviceId(),
                            sites.get(reading.deviceId()),
                            reading.at(),
                            said(reading.facts().get()));
                }
            }
            mark(tracked.touched());
        }

        private void mark(Touched touched) throws SQLException {
            Sql.run(
                    connection,
                    "insert into rollup_mark (quarter) select unnest(?::timestamptz[])",
                    Sql.times(connection, touched.quarters()));
        }

        void committed() {
            if (tracked != null) {
                spans.committed(tracked);
                restarts.committed();
            }
        }
    }

    private record Key(long device, long at) {
        static Key of(Reading reading) {
            return new Key(reading.deviceId(), reading.at().toEpochMilli());
        }
    }

    private static FactStore.Said said(Facts facts) {
        return new FactStore.Said(
                facts.values().entrySet().stream()
                        .collect(Collectors.toMap(fact -> fact.getKey().name(), Map.Entry::getValue)),
                facts.radios().stream()
                        .map(radio -> new FactStore.Radio(radio.number(), radio.label(), radio.mac()))
                        .toList(),
                facts.networks());
    }

    /** Without repeats of a key: the first one stays. */
    private static List<Reading> once(List<Reading> readings) {
        Set<Key> seen = new HashSet<>();
        return readings.stream().filter(reading -> seen.add(Key.of(reading))).toList();
    }

    private static List<Reading> inOrder(List<Reading> readings) {
        return readings.stream().sorted(Comparator.comparing(Reading::at)).toList();
    }

    private static Map<Long, List<Round>> rounds(List<Reading> readings) {
        Map<Long, List<Round>> rounds = new TreeMap<>();
        inOrder(readings).forEach(reading -> rounds.computeIfAbsent(reading.deviceId(), id -> new ArrayList<>())
                .add(new Round(reading.at().toEpochMilli(), reading.outcome(), reading.nextInSeconds())));
        return rounds;
    }
}
