package org.roundsman.readings.rollup;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.roundsman.measure.Metric;

/**
 * What is rolled up of one subject: raw readings into quarter hours, those into days. Of each metric count, least, mean
 * and greatest are kept; the mean of a day weighs quarters by their counts, so that it is the mean of the readings.
 */
public enum RolledTable {
    DEVICE(
            "device",
            "device_id",
            Metric.ROUND_TRIP,
            Metric.CPU,
            Metric.MEMORY,
            Metric.CLIENTS,
            Metric.PORT_IN,
            Metric.PORT_OUT,
            Metric.PORT_ERRORS),
    RADIO("radio", "device_id, number", Metric.NOISE, Metric.RADIO_CLIENTS, Metric.UTILISATION, Metric.RETRIES),
    NETWORK("network", "device_id, network_id", Metric.NETWORK_CLIENTS);

    private final String suffix;
    private final String keys;
    private final List<Metric> metrics;

    RolledTable(String suffix, String keys, Metric... metrics) {
        this.suffix = suffix;
        this.keys = keys;
        this.metrics = List.of(metrics);
    }

    public List<Metric> metrics() {
        return metrics;
    }

    /** Columns of a quarter in their order: keys, at, and four per metric. */
    public String quarterColumns() {
        return keys + ", at, " + figureColumns();
    }

    public String quarterTable() {
        return "quarter_" + suffix;
    }

    public String quarterKey() {
        return keys + ", at";
    }

    private String figureColumns() {
        return each(", ", c -> c + "_n, " + c + "_min, " + c + "_mean, " + c + "_max");
    }

    private String each(String between, Function<String, String> of) {
        return metrics.stream().map(Metric::column).map(of).collect(Collectors.joining(between));
    }

    /**
     * Builds one quarter hour from the raw readings; parameters: its start twice, its end.
     *
     * @param anew whether the raw readings are complete, so that what stands there is replaced
     */
    String quarterFromRaw(boolean anew) {
        String figures = each(", ", c -> "count(" + c + "), min(" + c + "), avg(" + c + "), max(" + c + ")");
        String insert = "insert into " + quarterTable() + " (" + quarterColumns() + ") select " + keys
                + ", ?::timestamptz, " + figures + " from reading_" + suffix
                + " where at >= ?::timestamptz and at < ?::timestamptz group by " + keys
                + " having " + each(" + ", c -> "count(" + c + ")") + " > 0"
                + " on conflict (" + quarterKey() + ") do ";
        return anew ? insert + "update set " + replaced() + " where " + grown(quarterTable()) : insert + "nothing";
    }

    private String replaced() {
        return each(", ", c -> List.of("_n", "_min", "_mean", "_max").stream()
                .map(part -> c + part + " = excluded." + c + part)
                .collect(Collectors.joining(", ")));
    }

    /** Raw readings are only ever added, so equal counts mean equal figures. */
    private String grown(String table) {
        return "(" + each(", ", c -> table + "." + c + "_n") + ") is distinct from ("
                + each(", ", c -> "excluded." + c + "_n") + ")";
    }

    /** Builds days from quarters; parameters: arrays of site, day, start and end, then the first start and the last end. */
    String dayFromQuarters() {
        String quarterKeys = "q." + keys.replace(", ", ", q.");
        String figures = each(
                ", ",
                c -> "sum(q." + c + "_n), min(q." + c + "_min), sum(q." + c + "_mean::float8 * q." + c
                        + "_n) / nullif(sum(q." + c + "_n), 0), max(q." + c + "_max)");
        return "insert into day_" + suffix + " (" + keys + ", day, " + figureColumns() + ") select " + quarterKeys
                + ", b.day, " + figures
                + " from unnest(?::bigint[], ?::date[], ?::timestamptz[], ?::timestamptz[]) b (site_id, day, from_at, to_at)"
                + " join device d on d.site_id = b.site_id"
                + " join " + quarterTable() + " q on q.device_id = d.id and q.at >= b.from_at and q.at < b.to_at"
                + " where q.at >= ?::timestamptz and q.at < ?::timestamptz group by " + quarterKeys
                + ", b.day on conflict (" + keys + ", day) do update set " + replaced();
    }
}
