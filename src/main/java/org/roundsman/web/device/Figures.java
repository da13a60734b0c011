package org.roundsman.web.device;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Values;
import org.roundsman.web.page.Words;

/** Readings as names and values. */
final class Figures {

    private static final double CLOCK_TOLERANCE_S = 60;

    private Figures() {}

    static List<Figure> ofDevice(Values values, boolean accessPoint) {
        List<Figure> figures = new ArrayList<>();
        if (accessPoint) {
            figures.add(figure("Clients", Words.figure(values.get(Metric.CLIENTS), 0, "")));
        }
        figures.add(figure("Running for", length(values.get(Metric.UPTIME))));
        figures.add(figure("Round trip", Words.figure(values.get(Metric.ROUND_TRIP), 1, "ms")));
        figures.add(figure("CPU load", Words.figure(values.get(Metric.CPU), 0, "%")));
        figures.add(figure("Memory used", Words.figure(values.get(Metric.MEMORY), 0, "%")));
        figures.add(figure("Uplink port", Words.figure(values.get(Metric.PORT_SPEED), 0, "Mb/s")));
        figures.add(figure("Traffic in", Words.rate(values.get(Metric.PORT_IN))));
        figures.add(figure("Traffic out", Words.rate(values.get(Metric.PORT_OUT))));
        figures.add(figure("Port errors", Words.figure(values.get(Metric.PORT_ERRORS), 2, "/s")));
        figures.add(clock(values.get(Metric.CLOCK_OFFSET)));
        return figures;
    }

    private static Figure figure(String name, String value) {
        return new Figure(name, value, "");
    }

    private static String length(OptionalDouble seconds) {
        return seconds.isPresent()
                ? Words.length(Duration.ofSeconds((long) seconds.getAsDouble()))
                : Words.NOT_AVAILABLE;
    }

    private static Figure clock(OptionalDouble offset) {
        if (offset.isEmpty()) {
            return figure("Device clock", Words.NOT_AVAILABLE);
        }
        double seconds = offset.getAsDouble();
        if (Math.abs(seconds) < CLOCK_TOLERANCE_S) {
            return figure("Device clock", "right");
        }
        String by = Words.length(Duration.ofSeconds((long) Math.abs(seconds)));
        return new Figure("Device clock", by + (seconds < 0 ? " behind" : " ahead"), "Set its time server.");
    }

    static List<Figure> ofNetworks(List<NetworkReading> networks) {
        return networks.stream()
                .map(n -> figure(n.ssid(), Words.figure(n.values().get(Metric.NETWORK_CLIENTS), 0, "")))
                .toList();
    }

    /** What is stored of a device. */
    static List<Figure> ofFacts(List<DeviceFacts.Said> said, ZoneId zone) {
        Map<String, DeviceFacts.Said> byName =
                said.stream().collect(Collectors.toMap(DeviceFacts.Said::fact, Function.identity()));
        return Arrays.stream(FactName.values())
                .filter(name -> byName.containsKey(name.fact.name()))
                .map(name -> figure(name, byName.get(name.fact.name()), zone))
                .toList();
    }

    private static Figure figure(FactName name, DeviceFacts.Said said, ZoneId zone) {
        return new Figure(name.text, said.value(), "since " + Words.moment(said.since(), zone));
    }

    /** What a device has just said. */
    static List<Figure> ofFacts(Map<Fact, String> values) {
        return Arrays.stream(FactName.values())
                .filter(name -> values.containsKey(name.fact))
                .map(name -> figure(name.text, values.get(name.fact)))
                .toList();
    }

    /** Facts in the order of the page, with their names there. */
    private enum FactName {
        MAKER(Fact.MAKER, "Maker"),
        MODEL(Fact.MODEL, "Model"),
        SERIAL(Fact.SERIAL, "Serial number"),
        FIRMWARE(Fact.FIRMWARE, "Firmware"),
        HARDWARE(Fact.HARDWARE_REVISION, "Hardware revision"),
        MAC(Fact.BASE_MAC, "MAC address"),
        NAME(Fact.NAME, "Calls itself"),
        LOCATION(Fact.LOCATION, "Says it is at"),
        CONTACT(Fact.CONTACT, "Says its contact is"),
        DESCRIPTION(Fact.DESCRIPTION, "Describes itself as"),
        OBJECT_ID(Fact.OBJECT_ID, "Object ID"),
        ENGINE_ID(Fact.ENGINE_ID, "SNMP engine ID");

        private final Fact fact;
        private final String text;

        FactName(Fact fact, String text) {
            this.fact = fact;
            this.text = text;
        }
    }
}
