package org.roundsman.readings.rollup;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.roundsman.fleet.FactStore;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Values;
import org.roundsman.readings.HistoryLoad.DeviceQuarter;
import org.roundsman.readings.HistoryLoad.PastSpan;
import org.roundsman.readings.sql.CopyRows;
import org.roundsman.readings.sql.CopyTarget;
import org.roundsman.readings.sql.Sql;

/** Loads quarter hours of a time that raw readings never covered, within one transaction. */
public final class PastQuarters {

    private final Connection connection;
    private final FactStore networks = new FactStore();
    private final Map<Long, Long> sites = new HashMap<>();

    public PastQuarters(Connection connection) {
        this.connection = connection;
    }

    /**
     * Stores the rows.
     *
     * @param mayExist whether to leave alone what exists; otherwise an existing row fails the transaction
     */
    public void load(List<DeviceQuarter> quarters, List<PastSpan> spans, Instant now, boolean mayExist)
            throws SQLException {
        findSites(quarters, spans);
        copy(RolledTable.DEVICE, devices(quarters), mayExist);
        copy(RolledTable.RADIO, radios(quarters), mayExist);
        copy(RolledTable.NETWORK, networks(quarters), mayExist);
        insert(spans);
        rollUp(quarters, spans, now);
    }

    private void findSites(List<DeviceQuarter> quarters, List<PastSpan> spans) throws SQLException {
        Set<Long> ids = quarters.stream().map(DeviceQuarter::deviceId).collect(Collectors.toSet());
        spans.forEach(span -> ids.add(span.deviceId()));
        try (var statement = connection.prepareStatement("select id, site_id from device where id = any (?)")) {
            Sql.fill(statement, Sql.ids(connection, ids));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    sites.put(row.getLong(1), row.getLong(2));
                }
            }
        }
        ids.removeAll(sites.keySet());
        if (!ids.isEmpty()) {
            throw new IllegalArgumentException(
                    "no device has the id " + ids.iterator().next());
        }
    }

    private void copy(RolledTable table, CopyRows rows, boolean mayExist) throws SQLException {
        CopyTarget target = new CopyTarget(table.quarterTable(), table.quarterColumns(), table.quarterKey());
        if (mayExist) {
            target.copyNew(connection, rows);
        } else {
            target.copy(connection, rows);
        }
    }

    private static CopyRows devices(List<DeviceQuarter> quarters) {
        CopyRows rows = new CopyRows();
        for (DeviceQuarter quarter : quarters) {
            rows.row(2 + 4 * RolledTable.DEVICE.metrics().size())
                    .int8(quarter.deviceId())
                    .time(quarter.at().toEpochMilli());
            figures(rows, RolledTable.DEVICE, quarter.samples(), quarter.device(), quarter.device());
        }
        return rows;
    }

    private static CopyRows radios(List<DeviceQuarter> quarters) {
        CopyRows rows = new CopyRows();
        for (DeviceQuarter quarter : quarters) {
            for (var radio : quarter.radios()) {
                rows.row(3 + 4 * RolledTable.RADIO.metrics().size())
                        .int8(quarter.deviceId())
                        .int2(radio.number())
                        .time(quarter.at().toEpochMilli());
                figures(rows, RolledTable.RADIO, quarter.samples(), radio.mean(), radio.max());
            }
        }
        return rows;
    }

    private CopyRows networks(List<DeviceQuarter> quarters) throws SQLException {
        CopyRows rows = new CopyRows();
        for (DeviceQuarter quarter : quarters) {
            for (var network : quarter.networks()) {
                rows.row(3 + 4 * RolledTable.NETWORK.metrics().size())
                        .int8(quarter.deviceId())
                        .int4(networks.networkId(connection, sites.get(quarter.deviceId()), network.ssid()))
                        .time(quarter.at().toEpochMilli());
                figures(rows, RolledTable.NETWORK, quarter.samples(), network.mean(), network.mean());
            }
        }
        return rows;
    }

    /** The least is not known: the mean stands for it, as it does for the greatest where that is missing. */
    private static void figures(CopyRows rows, RolledTable table, int samples, Values mean, Values max) {
        for (Metric metric : table.metrics()) {
            double middle = mean.raw(metric);
            if (Double.isNaN(middle)) {
                rows.int2(0).nothing().nothing().nothing();
            } else {
                double top = max.has(metric) ? Math.max(middle, max.raw(metric)) : middle;
                rows.int2(samples).real(middle).real(middle).real(top);
            }
        }
    }

    private void insert(List<PastSpan> spans) throws SQLException {
        try (var statement = connection.prepareStatement(
                "insert into span (device_id, from_at, to_at, condition) values (?, ?, ?, ?) on conflict do nothing")) {
            for (PastSpan span : spans) {
                statement.setLong(1, span.deviceId());
                statement.setObject(2, Sql.time(span.from()));
                statement.setObject(3, Sql.time(span.to()));
                statement.setInt(4, span.condition().code());
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    private void rollUp(List<DeviceQuarter> quarters, List<PastSpan> spans, Instant now) throws SQLException {
        TreeSet<Instant> times =
                quarters.stream().map(DeviceQuarter::at).collect(Collectors.toCollection(TreeSet::new));
        Collection<Long> touched = new HashSet<>(sites.values());
        if (!times.isEmpty()) {
            Instant end = times.last().plus(RollUp.QUARTER);
            Sql.run(
                    connection,
                    "update readings_state set raw_since = greatest(raw_since, ?::timestamptz)",
                    Sql.time(end));
            var zones = Days.zones(connection);
            zones.keySet().retainAll(touched);
            Days.build(connection, Days.of(zones, times));
        }
        spans.forEach(span -> addQuarters(times, span));
        if (!times.isEmpty()) {
            SiteQuarters.build(connection, times.first(), times.last().plus(RollUp.QUARTER), now, touched);
        }
    }

    private static void addQuarters(TreeSet<Instant> times, PastSpan span) {
        times.add(floor(span.from()));
        times.add(floor(span.to().minusMillis(1)));
    }

    private static Instant floor(Instant at) {
        return Instant.ofEpochMilli(org.roundsman.readings.spans.Touched.quarter(at.toEpochMilli()));
    }
}
