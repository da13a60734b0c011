package org.roundsman.readings.store;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Values;
import org.roundsman.readings.sql.CopyRows;
import org.roundsman.readings.sql.CopyTarget;

/** How readings become rows of the raw tables. */
final class RawTables {

    static final CopyTarget DEVICE = new CopyTarget(
            "reading_device",
            "device_id, at, outcome, next_in_s, round_trip, uptime, cpu, memory, clients, port_speed, port_in,"
                    + " port_out, port_errors, clock_offset",
            "device_id, at");
    static final CopyTarget RADIO = new CopyTarget(
            "reading_radio",
            "device_id, number, at, band, channel, width, tx_power, noise, clients, utilisation, retries",
            "device_id, number, at");
    static final CopyTarget NETWORK =
            new CopyTarget("reading_network", "device_id, network_id, at, clients", "device_id, network_id, at");

    private RawTables() {}

    /** Finds or makes the id of a site's network. */
    interface NetworkIds {
        int of(long siteId, String ssid) throws java.sql.SQLException;
    }

    static CopyRows devices(List<Reading> readings) {
        CopyRows rows = new CopyRows();
        for (Reading reading : readings) {
            Values device = reading.device();
            rows.row(DEVICE.width())
                    .int8(reading.deviceId())
                    .time(reading.at().toEpochMilli())
                    .int2(reading.outcome().code())
                    .int4(reading.nextInSeconds())
                    .real(device.raw(Metric.ROUND_TRIP))
                    .wide(device.raw(Metric.UPTIME))
                    .real(device.raw(Metric.CPU))
                    .real(device.raw(Metric.MEMORY))
                    .int4(device.raw(Metric.CLIENTS))
                    .real(device.raw(Metric.PORT_SPEED))
                    .real(device.raw(Metric.PORT_IN))
                    .real(device.raw(Metric.PORT_OUT))
                    .real(device.raw(Metric.PORT_ERRORS))
                    .wide(device.raw(Metric.CLOCK_OFFSET));
        }
        return rows;
    }

    /** One row per radio; of two with the same number the first is kept. */
    static CopyRows radios(List<Reading> readings) {
        CopyRows rows = new CopyRows();
        for (Reading reading : readings) {
            Set<Integer> seen = new HashSet<>();
            for (RadioReading radio : reading.radios()) {
                if (seen.add(radio.number())) {
                    radio(rows, reading, radio);
                }
            }
        }
        return rows;
    }

    private static void radio(CopyRows rows, Reading reading, RadioReading radio) {
        Values values = radio.values();
        rows.row(RADIO.width())
                .int8(reading.deviceId())
                .int2(radio.number())
                .time(reading.at().toEpochMilli())
                .real(values.raw(Metric.BAND))
                .int2(values.raw(Metric.CHANNEL))
                .real(values.raw(Metric.WIDTH))
                .real(values.raw(Metric.TX_POWER))
                .real(values.raw(Metric.NOISE))
                .int4(values.raw(Metric.RADIO_CLIENTS))
                .real(values.raw(Metric.UTILISATION))
                .real(values.raw(Metric.RETRIES));
    }

    /** One row per network; of two with the same SSID the first is kept. */
    static CopyRows networks(List<Reading> readings, java.util.Map<Long, Long> sites, NetworkIds ids)
            throws java.sql.SQLException {
        CopyRows rows = new CopyRows();
        for (Reading reading : readings) {
            Set<Integer> seen = new HashSet<>();
            for (NetworkReading network : reading.networks()) {
                int id = ids.of(sites.get(reading.deviceId()), network.ssid());
                if (seen.add(id)) {
                    rows.row(NETWORK.width())
                            .int8(reading.deviceId())
                            .int4(id)
                            .time(reading.at().toEpochMilli())
                            .int4(network.values().raw(Metric.NETWORK_CLIENTS));
                }
            }
        }
        return rows;
    }
}
