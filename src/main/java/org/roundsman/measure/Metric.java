package org.roundsman.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Everything that a round can measure. The key names the metric in profiles ({@code device.cpu}) and, without its
 * subject, is the column name in the readings tables. A value outside the range is a fault of the device or of the
 * profile and is stored as missing.
 */
public enum Metric {
    /** Time between the first request of the round and its reply. */
    ROUND_TRIP(Subject.DEVICE, "round_trip", Unit.MILLISECOND, 0, 600_000),
    /** Time since the device's management part restarted (sysUpTime, RFC 3418), widened past its 497-day wrap. */
    UPTIME(Subject.DEVICE, "uptime", Unit.SECOND, 0, 4e9),
    CPU(Subject.DEVICE, "cpu", Unit.PERCENT, 0, 100),
    MEMORY(Subject.DEVICE, "memory", Unit.PERCENT, 0, 100),
    /** Clients on the whole unit; the sum over its radios unless the device says it itself. */
    CLIENTS(Subject.DEVICE, "clients", Unit.COUNT, 0, 100_000),
    /** Negotiated speed of the uplink port. */
    PORT_SPEED(Subject.DEVICE, "port_speed", Unit.MEGABIT_PER_SECOND, 0, 1_000_000),
    /** Traffic into the device through the uplink port. */
    PORT_IN(Subject.DEVICE, "port_in", Unit.BIT_PER_SECOND, 0, 1e12),
    /** Traffic out of the device through the uplink port. */
    PORT_OUT(Subject.DEVICE, "port_out", Unit.BIT_PER_SECOND, 0, 1e12),
    /** Errors in either direction on the uplink port. */
    PORT_ERRORS(Subject.DEVICE, "port_errors", Unit.PER_SECOND, 0, 1e9),
    /** The device's own clock minus ours. */
    CLOCK_OFFSET(Subject.DEVICE, "clock_offset", Unit.SECOND, -4e9, 4e9),

    /** Band by its usual name: 2.4, 5 or 6. */
    BAND(Subject.RADIO, "band", Unit.GIGAHERTZ, 2, 7),
    /** Primary channel number within the band (IEEE 802.11). */
    CHANNEL(Subject.RADIO, "channel", Unit.COUNT, 1, 253),
    WIDTH(Subject.RADIO, "width", Unit.MEGAHERTZ, 5, 320),
    TX_POWER(Subject.RADIO, "tx_power", Unit.DECIBEL_MILLIWATT, -40, 60),
    NOISE(Subject.RADIO, "noise", Unit.DECIBEL_MILLIWATT, -120, 0),
    /** Associated stations; at most 2007 per BSS (IEEE 802.11 association identifiers), several BSS on one radio. */
    RADIO_CLIENTS(Subject.RADIO, "clients", Unit.COUNT, 0, 32_112),
    /** Share of time that the primary channel was sensed busy. */
    UTILISATION(Subject.RADIO, "utilisation", Unit.PERCENT, 0, 100),
    /** Frames delivered only after at least one retry, of all frames delivered. */
    RETRIES(Subject.RADIO, "retries", Unit.PERCENT, 0, 100),

    NETWORK_CLIENTS(Subject.NETWORK, "clients", Unit.COUNT, 0, 32_112);

    private final Subject subject;
    private final String column;
    private final Unit unit;
    private final double min;
    private final double max;

    Metric(Subject subject, String column, Unit unit, double min, double max) {
        this.subject = subject;
        this.column = column;
        this.unit = unit;
        this.min = min;
        this.max = max;
    }

    public Subject subject() {
        return subject;
    }

    /** Column name in the readings tables. */
    public String column() {
        return column;
    }

    /** Name in profiles: subject, dot, column, such as {@code radio.utilisation}. */
    public String key() {
        return subject.name().toLowerCase(java.util.Locale.ROOT) + "." + column;
    }

    public Unit unit() {
        return unit;
    }

    /** Whether a finite figure lies in this metric's range, ends included. */
    public boolean admits(double value) {
        return value >= min && value <= max;
    }

    /** The metrics of one subject, in the order of {@link Values}. */
    public static List<Metric> of(Subject subject) {
        return Arrays.stream(values()).filter(m -> m.subject == subject).toList();
    }

    /** The metric with that profile key, if there is one. */
    public static Optional<Metric> byKey(String key) {
        return Arrays.stream(values()).filter(m -> m.key().equals(key)).findFirst();
    }
}
