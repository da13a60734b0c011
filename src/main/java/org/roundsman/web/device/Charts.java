package org.roundsman.web.device;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.measure.Metric;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.readings.DeviceHistory;
import org.roundsman.readings.Series;
import org.roundsman.readings.Span;
import org.roundsman.web.chart.Range;
import org.roundsman.web.chart.Window;

/** Asks for a device's figures over time. */
@ApplicationScoped
class Charts {

    private static final List<Metric> OF_RADIO =
            List.of(Metric.RADIO_CLIENTS, Metric.UTILISATION, Metric.RETRIES, Metric.NOISE);
    private static final List<Metric> OF_DEVICE = List.of(Metric.CPU, Metric.MEMORY, Metric.ROUND_TRIP);

    private final DeviceHistory history;

    Charts(DeviceHistory history) {
        this.history = history;
    }

    ChartSet of(DeviceView view, Range range) {
        long id = view.row().deviceId();
        Window window = range.window(view.now(), view.zone());
        List<Span> spans = history.spans(id, window.from(), window.to());
        List<ChartGroup> groups = new ArrayList<>();
        for (RadioReading radio : view.last().map(Reading::radios).orElse(List.of())) {
            groups.add(ofRadio(id, radio, window, spans));
        }
        groups.add(ofDevice(view, window, spans));
        return ChartSet.of(id, range, groups);
    }

    private ChartGroup ofRadio(long id, RadioReading radio, Window window, List<Span> spans) {
        ChartGroup group = new ChartGroup("radio-" + radio.number(), RadioTitle.of(radio), window, spans);
        for (Metric metric : OF_RADIO) {
            group.add(history.ofRadio(id, radio.number(), metric, window.from(), window.to(), window.step()));
        }
        return group;
    }

    private ChartGroup ofDevice(DeviceView view, Window window, List<Span> spans) {
        long id = view.row().deviceId();
        ChartGroup group = new ChartGroup("device", "Device", window, spans);
        if (view.accessPoint()) {
            group.add(series(id, Metric.CLIENTS, window));
        }
        group.addPair(series(id, Metric.PORT_IN, window), series(id, Metric.PORT_OUT, window));
        OF_DEVICE.forEach(metric -> group.add(series(id, metric, window)));
        return group;
    }

    private Series series(long id, Metric metric, Window window) {
        return history.ofDevice(id, metric, window.from(), window.to(), window.step());
    }
}
