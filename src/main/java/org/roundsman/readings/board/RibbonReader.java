package org.roundsman.readings.board;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.roundsman.measure.Condition;
import org.roundsman.readings.BusiestRadio;
import org.roundsman.readings.Ribbon;
import org.roundsman.readings.spans.Touched;
import org.roundsman.readings.sql.Sql;

/** Ribbons of many sites or devices, in one statement for sites and three for devices. */
final class RibbonReader {

    static final Ribbon BLANK = new Ribbon(Instant.EPOCH, Collections.nCopies(Ribbon.CELLS, Ribbon.Cell.BLANK));

    private final Connection connection;
    private final Moment moment;
    private final Instant from;

    RibbonReader(Connection connection, Moment moment) {
        this.connection = connection;
        this.moment = moment;
        this.from = moment.quarter().minusMillis((Ribbon.CELLS - 1) * Touched.QUARTER);
    }

    /** What is known now, as a cell. */
    static Ribbon.Cell now(
            OptionalInt clients, Optional<BusiestRadio> busiest, Map<Condition, Integer> counts, int devices) {
        int trouble = counts.getOrDefault(Condition.SILENT, 0) + counts.getOrDefault(Condition.REFUSING, 0);
        int watched = trouble + counts.getOrDefault(Condition.ANSWERING, 0);
        return new Ribbon.Cell(
                clients.isPresent() ? OptionalDouble.of(clients.getAsInt()) : OptionalDouble.empty(),
                busiest.isPresent() ? OptionalDouble.of(busiest.get().utilisation()) : OptionalDouble.empty(),
                watched == 0 ? 0 : (double) trouble / watched,
                devices == 0 ? 0 : (double) watched / devices);
    }

    /** The ribbon with what is known now in its last cell, when the roll-up has not come to that quarter hour yet. */
    static Ribbon upTo(Ribbon ribbon, Ribbon.Cell now) {
        if (!ribbon.cells().get(Ribbon.CELLS - 1).equals(Ribbon.Cell.BLANK)) {
            return ribbon;
        }
        List<Ribbon.Cell> cells = new ArrayList<>(ribbon.cells());
        cells.set(Ribbon.CELLS - 1, now);
        return new Ribbon(ribbon.from(), cells);
    }

    Map<Long, Ribbon> ofSites(Collection<Long> sites) throws SQLException {
        Map<Long, Cells> found = blank(sites);
        read(
                "select site_id id, at, clients_mean, utilisation_max, answering_s, silent_s + refusing_s trouble_s,"
                        + " covered_s from quarter_site where site_id = any (?) and at >= ?::timestamptz and at < ?::timestamptz",
                sites,
                row -> {
                    Cells cells = found.get(row.getLong("id"));
                    int cell = cell(row);
                    cells.clients[cell] = Sql.real(row, "clients_mean").orElse(Double.NaN);
                    cells.utilisation[cell] = Sql.real(row, "utilisation_max").orElse(Double.NaN);
                    cells.trouble[cell] = row.getInt("trouble_s");
                    cells.watched[cell] = row.getInt("answering_s") + cells.trouble[cell];
                    cells.covered[cell] = row.getInt("covered_s");
                });
        return ribbons(found);
    }

    Map<Long, Ribbon> ofDevices(Collection<Long> devices) throws SQLException {
        Map<Long, Cells> found = blank(devices);
        read(
                "select device_id id, at, clients_mean figure from quarter_device where device_id = any (?)"
                        + " and at >= ?::timestamptz and at < ?::timestamptz and clients_n > 0",
                devices,
                row -> found.get(row.getLong("id")).clients[cell(row)] = row.getDouble("figure"));
        read(
                "select device_id id, at, max(utilisation_mean) figure from quarter_radio where device_id = any (?)"
                        + " and at >= ?::timestamptz and at < ?::timestamptz and utilisation_n > 0 group by device_id, at",
                devices,
                row -> found.get(row.getLong("id")).utilisation[cell(row)] = row.getDouble("figure"));
        spans(devices, found);
        return ribbons(found);
    }

    private void spans(Collection<Long> devices, Map<Long, Cells> found) throws SQLException {
        read(
                "select s.device_id id, s.condition, s.from_at, coalesce(s.to_at, n.last_round_at + n.next_in_s * interval"
                        + " '1 second') to_at from span s left join device_now n on n.device_id = s.device_id"
                        + " where s.device_id = any (?) and s.condition <> 4 and coalesce(s.to_at, 'infinity') >"
                        + " ?::timestamptz and s.from_at < ?::timestamptz",
                devices,
                row -> {
                    boolean trouble = row.getInt("condition") != Condition.ANSWERING.code();
                    long end = Math.min(Sql.millis(row, "to_at"), moment.now().toEpochMilli());
                    found.get(row.getLong("id")).span(from.toEpochMilli(), Sql.millis(row, "from_at"), end, trouble);
                });
        double going = (moment.now().toEpochMilli() - moment.quarter().toEpochMilli()) / 1000.0;
        for (Cells cells : found.values()) {
            java.util.Arrays.fill(cells.covered, Touched.QUARTER / 1000.0);
            cells.covered[Ribbon.CELLS - 1] = going;
        }
    }

    private interface RowReader {
        void read(ResultSet row) throws SQLException;
    }

    private void read(String sql, Collection<Long> ids, RowReader reader) throws SQLException {
        if (ids.isEmpty()) {
            return;
        }
        Instant to = from.plusMillis(Ribbon.CELLS * Touched.QUARTER);
        try (var statement = connection.prepareStatement(sql)) {
            Sql.fill(statement, Sql.ids(connection, ids), Sql.time(from), Sql.time(to));
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    reader.read(row);
                }
            }
        }
    }

    private int cell(ResultSet row) throws SQLException {
        return (int) ((Sql.millis(row, "at") - from.toEpochMilli()) / Touched.QUARTER);
    }

    private static Map<Long, Cells> blank(Collection<Long> ids) {
        Map<Long, Cells> cells = new HashMap<>();
        ids.forEach(id -> cells.put(id, new Cells()));
        return cells;
    }

    private Map<Long, Ribbon> ribbons(Map<Long, Cells> found) {
        Map<Long, Ribbon> ribbons = new HashMap<>();
        found.forEach((id, cells) -> ribbons.put(id, cells.ribbon(from)));
        return ribbons;
    }
}
