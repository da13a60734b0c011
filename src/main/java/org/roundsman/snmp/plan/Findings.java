package org.roundsman.snmp.plan;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;

/** Works out a plan's figures from the values that its slots hold. One visit. */
final class Findings {

    /** A clock further off than this is worth a remark: ten minutes. */
    private static final double CLOCK_WORTH_A_REMARK = 600;

    private static final double TWO_TO_32 = 4_294_967_296.0;

    private final PollPlan plan;
    private final Errand errand;
    private final long ourMillis;
    private final Map<Metric, Double> device = new EnumMap<>(Metric.class);
    private final List<RadioReading> radios = new ArrayList<>();

    Findings(PollPlan plan, Errand errand, long ourMillis) {
        this.plan = plan;
        this.errand = errand;
        this.ourMillis = ourMillis;
    }

    /** Figures of the device; an uptime that is unknown is NaN. */
    Values device(double uptimeSeconds) {
        Values.Builder values = Values.builder(Subject.DEVICE);
        values.set(Metric.ROUND_TRIP, errand.roundTripMillis());
        values.set(Metric.UPTIME, uptimeSeconds);
        for (Figure figure : plan.device()) {
            device.put(figure.metric(), checked(figure, "device"));
        }
        // An interface without a notion of speed says 0 (RFC 2863): that is no measurement.
        device.computeIfPresent(Metric.PORT_SPEED, (metric, speed) -> speed == 0 ? Double.NaN : speed);
        plan.device().forEach(this::dropWhatTheLineCannotTell);
        device.forEach(values::set);
        if (!device.containsKey(Metric.CLIENTS)) {
            values.set(Metric.CLIENTS, clientsOfAllRadios());
        }
        remarkClock();
        return values.build();
    }

    private void dropWhatTheLineCannotTell(Figure figure) {
        Metric traffic = figure.metric();
        double speed = device.getOrDefault(Metric.PORT_SPEED, Double.NaN) * 1e6;
        if (traffic != Metric.PORT_IN && traffic != Metric.PORT_OUT || !(speed > 0)) {
            return;
        }
        if (device.getOrDefault(traffic, Double.NaN) > speed) {
            errand.remark(traffic.key() + " came out above the port's speed and was dropped");
            device.put(traffic, Double.NaN);
        } else if (!Double.isNaN(device.getOrDefault(traffic, Double.NaN)) && figure.mayHaveWrappedUnseen(speed)) {
            errand.remark(traffic.key() + " was dropped: on a port of this speed the device's 32-bit counter may have"
                    + " gone round unseen since the last round. SNMP v2c or v3 gives 64-bit counters; or make rounds more"
                    + " often than every " + (long) (TWO_TO_32 * 8 / speed) + " s");
            device.put(traffic, Double.NaN);
        }
    }

    private void remarkClock() {
        double offset = device.getOrDefault(Metric.CLOCK_OFFSET, Double.NaN);
        if (Math.abs(offset) > CLOCK_WORTH_A_REMARK) {
            java.time.Instant shown = java.time.Instant.ofEpochMilli(ourMillis + Math.round(offset * 1000))
                    .truncatedTo(java.time.temporal.ChronoUnit.SECONDS);
            errand.remark("the device's clock says " + shown + ": set its time, best by NTP");
        }
    }

    /** NaN unless each radio said how many it has. */
    private double clientsOfAllRadios() {
        double sum = plan.radios().isEmpty() || radios().size() < plan.radios().size() ? Double.NaN : 0;
        for (RadioReading radio : radios()) {
            sum += radio.values().raw(Metric.RADIO_CLIENTS);
        }
        return sum;
    }

    /** Radios of which anything is known. */
    List<RadioReading> radios() {
        if (radios.isEmpty()) {
            plan.radios().forEach((number, radio) -> {
                Values values = values(Subject.RADIO, radio.figures(), "radio " + number);
                if (!values.equals(Values.none(Subject.RADIO))) {
                    radios.add(new RadioReading(number, values));
                }
            });
        }
        return radios;
    }

    private Values values(Subject subject, List<Figure> figures, String who) {
        Values.Builder values = Values.builder(subject);
        for (Figure figure : figures) {
            values.set(figure.metric(), checked(figure, who));
        }
        return values.build();
    }

    private double checked(Figure figure, String who) {
        double value = figure.value(ourMillis);
        if (!Double.isNaN(value) && !figure.metric().admits(value)) {
            errand.remark(who + ": " + figure.metric().key() + " of " + value + " is out of range and was dropped");
            return Double.NaN;
        }
        return value;
    }

    /** By SSID, over all radios: a sum is given only when each row gave its part. */
    List<NetworkReading> networks() {
        Map<String, Map<Metric, Double>> bySsid = new LinkedHashMap<>();
        for (PollPlan.NetworkPlan network : plan.networks()) {
            Map<Metric, Double> sums = bySsid.computeIfAbsent(network.ssid(), s -> new EnumMap<>(Metric.class));
            for (Figure figure : network.figures()) {
                sums.merge(figure.metric(), checked(figure, "network " + network.ssid()), Double::sum);
            }
        }
        List<NetworkReading> readings = new ArrayList<>();
        bySsid.forEach((ssid, sums) -> {
            Values.Builder values = Values.builder(Subject.NETWORK);
            sums.forEach(values::set);
            if (sums.values().stream().anyMatch(v -> !Double.isNaN(v))) {
                readings.add(new NetworkReading(ssid, values.build()));
            }
        });
        return readings;
    }
}
