package org.roundsman.readings.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.spans.SpanState;
import org.roundsman.readings.sql.CopyRows;
import org.roundsman.readings.sql.CopyTarget;
import org.roundsman.readings.sql.Sql;

/** Writes the last round of each device; figures are replaced by a later answered round only. */
final class DeviceNow {

    private static final List<String> STATE = List.of(
            "last_round_at",
            "next_in_s",
            "outcome",
            "condition",
            "since",
            "misses",
            "missing_since",
            "missing_outcome");
    private static final List<String> FIGURES = List.of(
            "last_answered_at",
            "round_trip",
            "uptime",
            "cpu",
            "memory",
            "clients",
            "port_speed",
            "port_in",
            "port_out",
            "clock_offset",
            "busiest_radio",
            "busiest_utilisation");
    private static final CopyTarget TABLE = new CopyTarget(
            "device_now",
            Stream.of(List.of("device_id"), STATE, FIGURES)
                    .flatMap(List::stream)
                    .collect(Collectors.joining(", ")),
            "device_id");

    private DeviceNow() {}

    /**
     * Writes the states, and the figures of the latest answered readings.
     *
     * @param states by device
     * @param readings new ones of these devices, in any order
     */
    static void write(Connection connection, Map<Long, SpanState> states, List<Reading> readings) throws SQLException {
        Map<Long, Reading> answered = readings.stream()
                .filter(reading -> reading.outcome().kind() == Outcome.Kind.ANSWERED)
                .collect(Collectors.toMap(
                        Reading::deviceId, reading -> reading, (a, b) -> a.at().isAfter(b.at()) ? a : b));
        CopyRows rows = new CopyRows();
        // in the order of the key, so that two writers never wait for each other in a circle
        new ArrayList<>(states.entrySet())
                .stream()
                        .sorted(Comparator.comparing(Map.Entry::getKey))
                        .forEach(entry -> row(rows, entry.getKey(), entry.getValue(), answered.get(entry.getKey())));
        TABLE.stage(connection, rows);
        Sql.run(connection, upsert());
    }

    private static String upsert() {
        String state = STATE.stream().map(c -> c + " = excluded." + c).collect(Collectors.joining(", "));
        String figures = FIGURES.stream()
                .map(c -> c + " = case when excluded.last_answered_at > coalesce(device_now.last_answered_at,"
                        + " '-infinity') then excluded." + c + " else device_now." + c + " end")
                .collect(Collectors.joining(", "));
        return "insert into device_now (" + TABLE.columns() + ") select " + TABLE.columns() + " from " + TABLE.staged()
                + " on conflict (device_id) do update set " + state + ", " + figures;
    }

    private static void row(CopyRows rows, long device, SpanState state, Reading answered) {
        rows.row(TABLE.width())
                .int8(device)
                .time(state.last().at())
                .int4(state.last().nextSeconds())
                .int2(state.last().outcome().code())
                .int2(state.condition().code())
                .time(state.since())
                .int2(state.misses());
        if (state.misses() > 0) {
            rows.time(state.missingSince()).int2(state.missingOutcome().code());
        } else {
            rows.nothing().nothing();
        }
        if (answered == null) {
            FIGURES.forEach(figure -> rows.nothing());
        } else {
            figures(rows, answered);
        }
    }

    private static void figures(CopyRows rows, Reading reading) {
        Values device = reading.device();
        RadioReading busiest = reading.radios().stream()
                .filter(radio -> radio.values().has(Metric.UTILISATION))
                .max(Comparator.comparingDouble(radio -> radio.values().raw(Metric.UTILISATION)))
                .orElse(new RadioReading(0, Values.none(Subject.RADIO)));
        rows.time(reading.at().toEpochMilli())
                .real(device.raw(Metric.ROUND_TRIP))
                .wide(device.raw(Metric.UPTIME))
                .real(device.raw(Metric.CPU))
                .real(device.raw(Metric.MEMORY))
                .int4(device.raw(Metric.CLIENTS))
                .real(device.raw(Metric.PORT_SPEED))
                .real(device.raw(Metric.PORT_IN))
                .real(device.raw(Metric.PORT_OUT))
                .wide(device.raw(Metric.CLOCK_OFFSET));
        if (busiest.number() == 0) {
            rows.nothing().nothing();
        } else {
            rows.int2(busiest.number()).real(busiest.values().raw(Metric.UTILISATION));
        }
    }
}
