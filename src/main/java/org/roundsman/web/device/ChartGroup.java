package org.roundsman.web.device;

import io.quarkus.qute.RawString;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.roundsman.readings.Series;
import org.roundsman.readings.Span;
import org.roundsman.web.chart.Chart;
import org.roundsman.web.chart.ChartPicture;
import org.roundsman.web.chart.Window;
import org.roundsman.web.page.Words;

/** The charts of one radio, or of the device, and the same figures as a table. */
final class ChartGroup {

    /** One chart as it is shown. */
    record Shown(String name, String unit, boolean pair, boolean blank, RawString picture) {}

    /** One row of the table. */
    record Row(String time, List<String> figures) {}

    private final String key;
    private final String title;
    private final Window window;
    private final List<Span> spans;
    private final List<Shown> charts = new ArrayList<>();
    private final List<Series> all = new ArrayList<>();

    ChartGroup(String key, String title, Window window, List<Span> spans) {
        this.key = key;
        this.title = title;
        this.window = window;
        this.spans = spans;
    }

    void add(Series series) {
        draw(MetricLook.of(series.metric()), MetricLook.of(series.metric()).name(), List.of(series));
    }

    /** Traffic in and out, in one picture. */
    void addPair(Series in, Series out) {
        draw(MetricLook.of(in.metric()), "Traffic in and out", List.of(in, out));
    }

    private void draw(MetricLook look, String name, List<Series> series) {
        Chart chart = new Chart(
                key + "-" + look.key(),
                title + ": " + name,
                look.unit(),
                look.divisor(),
                look.leastTop(),
                series,
                window,
                spans);
        boolean blank = series.stream().allMatch(one -> one.points().isEmpty());
        charts.add(new Shown(name, look.unit(), series.size() > 1, blank, ChartPicture.of(chart)));
        all.addAll(series);
    }

    public String key() {
        return key;
    }

    public String title() {
        return title;
    }

    public List<Shown> charts() {
        return charts;
    }

    public List<String> columns() {
        return all.stream()
                .map(series -> MetricLook.of(series.metric()).column())
                .toList();
    }

    /** Mean figures, the newest first. */
    public List<Row> rows() {
        TreeSet<Instant> times = new TreeSet<>();
        all.forEach(series -> series.points().forEach(point -> times.add(point.at())));
        return times.descendingSet().stream().map(this::row).toList();
    }

    private Row row(Instant at) {
        return new Row(
                Words.moment(at, window.zone()),
                all.stream().map(series -> mean(series, at)).toList());
    }

    private static String mean(Series series, Instant at) {
        MetricLook look = MetricLook.of(series.metric());
        OptionalDouble mean = series.points().stream()
                .filter(point -> point.at().equals(at))
                .mapToDouble(point -> point.mean() / look.divisor())
                .findFirst();
        return mean.isPresent() ? Words.figure(mean, 1, "") : "–";
    }
}
