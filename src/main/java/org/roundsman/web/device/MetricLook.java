package org.roundsman.web.device;

import org.roundsman.measure.Metric;

/**
 * How a metric looks in charts and tables.
 *
 * @param key part of ids on the page
 * @param divisor of the stored figure, to reach the unit
 * @param leastTop least figure at the top of a chart's axis, in the unit
 */
record MetricLook(String key, String name, String unit, double divisor, double leastTop) {

    private static final double MEGA = 1e6;

    static MetricLook of(Metric metric) {
        return switch (metric) {
            case RADIO_CLIENTS, CLIENTS, NETWORK_CLIENTS -> plain(metric, "Clients", 5);
            case UTILISATION -> plain(metric, "Channel utilisation", 100);
            case RETRIES -> plain(metric, "Retries", 20);
            case NOISE -> plain(metric, "Noise", 0);
            case CPU -> plain(metric, "CPU load", 100);
            case MEMORY -> plain(metric, "Memory used", 100);
            case ROUND_TRIP -> plain(metric, "Round trip", 5);
            case PORT_IN -> new MetricLook("port_in", "Traffic in", "Mb/s", MEGA, 1);
            case PORT_OUT -> new MetricLook("port_out", "Traffic out", "Mb/s", MEGA, 1);
            default -> plain(metric, metric.column().replace('_', ' '), 1);
        };
    }

    private static MetricLook plain(Metric metric, String name, double leastTop) {
        return new MetricLook(metric.column(), name, metric.unit().symbol(), 1, leastTop);
    }

    String column() {
        return unit.isEmpty() ? name : name + ", " + unit;
    }
}
