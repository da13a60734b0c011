package org.roundsman.web.sheet;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Model;
import org.roundsman.measure.Metric;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Values;
import org.roundsman.topology.Port;
import org.roundsman.topology.TreeNode;
import org.roundsman.visits.Unit;
import org.roundsman.web.page.Words;
import org.roundsman.web.sheet.SheetView.Row;
import org.roundsman.web.sheet.SheetView.UnitView;

/** One device of a visit sheet in words. */
final class UnitWords {

    private static final Map<String, String> SAID =
            Map.of("SERIAL", "Serial number", "BASE_MAC", "MAC address", "FIRMWARE", "Firmware");

    private UnitWords() {}

    static UnitView of(Unit unit, ZoneId zone, Instant now) {
        return new UnitView(
                unit.device().name + ", " + unit.device().kind.word(),
                facts(unit),
                unit.last()
                        .map(reading ->
                                Words.moment(reading.at(), zone) + " site time, " + Words.ago(reading.at(), now))
                        .orElse(""),
                unit.last().map(UnitWords::readings).orElse(List.of()));
    }

    private static List<Row> facts(Unit unit) {
        Device device = unit.device();
        List<Row> rows = new ArrayList<>();
        rows.add(new Row("Place", device.place.isEmpty() ? "not entered" : device.place));
        rows.add(new Row("Model", model(unit)));
        for (String fact : List.of("SERIAL", "BASE_MAC", "FIRMWARE")) {
            rows.add(new Row(SAID.get(fact), unit.said().getOrDefault(fact, Words.NOT_AVAILABLE)));
        }
        rows.add(new Row("Polled at", device.host));
        rows.add(new Row("Hangs on", way(device, unit.up())));
        return rows;
    }

    private static String model(Unit unit) {
        Model model = unit.device().model;
        if (model == null) {
            return unit.said().getOrDefault("MODEL", "not known");
        }
        return model.maker + " " + model.name + (model.outdoor ? ", outdoor" : ", indoor")
                + (model.antenna.isEmpty() ? "" : ", " + model.antenna + " antenna")
                + (model.mains ? ", fed from the mains" : "")
                + (model.mount.isEmpty() ? "" : ", mount: " + model.mount);
    }

    /** {@code port 7 of sw-2 (up, power delivered, class 4), which hangs on port 1 of gw}. */
    private static String way(Device device, List<TreeNode> up) {
        if (up.size() < 2) {
            return up.isEmpty() || !up.get(0).place().known()
                    ? (device.kind == DeviceKind.GATEWAY ? "the line" : "not known")
                    : up.get(0).place().portTitle();
        }
        StringBuilder words = new StringBuilder();
        for (int i = 0; i + 1 < up.size(); i++) {
            TreeNode node = up.get(i);
            words.append(i == 0 ? "" : ", which hangs on ")
                    .append(node.place().portTitle())
                    .append(" of ")
                    .append(up.get(i + 1).name());
            node.port().ifPresent(port -> words.append(" (").append(port(port)).append(')'));
        }
        return words.toString();
    }

    private static String port(Port port) {
        return port.state().word()
                + port.power().map(power -> ", " + power.words()).orElse("");
    }

    private static List<Row> readings(Reading reading) {
        List<Row> rows = new ArrayList<>();
        Values values = reading.device();
        add(rows, "Clients", Optional.of(Words.figure(values.get(Metric.CLIENTS), 0, "")));
        add(rows, "Running for", length(values.get(Metric.UPTIME)));
        add(rows, "Uplink port", Optional.of(Words.figure(values.get(Metric.PORT_SPEED), 0, "Mb/s")));
        for (RadioReading radio : reading.radios()) {
            rows.add(new Row("Radio " + radio.number(), radio(radio.values())));
        }
        return rows;
    }

    private static void add(List<Row> rows, String name, Optional<String> value) {
        value.filter(text -> !text.equals(Words.NOT_AVAILABLE)).ifPresent(text -> rows.add(new Row(name, text)));
    }

    private static Optional<String> length(OptionalDouble seconds) {
        return seconds.isPresent()
                ? Optional.of(Words.length(Duration.ofSeconds((long) seconds.getAsDouble())))
                : Optional.empty();
    }

    /** {@code 5 GHz, channel 36, 40 MHz, 20 dBm; 12 clients, channel 34 % busy}. */
    private static String radio(Values values) {
        List<String> parts = new ArrayList<>();
        figure(parts, "", values, Metric.BAND, 1);
        figure(parts, "channel ", values, Metric.CHANNEL, 0);
        figure(parts, "", values, Metric.WIDTH, 0);
        figure(parts, "power ", values, Metric.TX_POWER, 1);
        OptionalDouble clients = values.get(Metric.RADIO_CLIENTS);
        if (clients.isPresent()) {
            parts.add(Words.many((long) clients.getAsDouble(), "client", "clients"));
        }
        figure(parts, "channel busy ", values, Metric.UTILISATION, 0);
        return parts.isEmpty() ? Words.NOT_AVAILABLE : String.join(", ", parts);
    }

    private static void figure(List<String> parts, String name, Values values, Metric metric, int decimals) {
        OptionalDouble figure = values.get(metric);
        if (figure.isPresent()) {
            parts.add(name + Words.figure(figure, decimals, metric.unit().symbol()));
        }
    }
}
