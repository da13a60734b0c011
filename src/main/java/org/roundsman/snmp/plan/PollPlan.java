package org.roundsman.snmp.plan;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Facts.RadioFacts;
import org.roundsman.snmp.counter.Moment;

/**
 * What to ask one device at each round, and what it means.
 *
 * @param profiles names of the profiles it was made from, the most specific first
 * @param fast the slots asked at each round
 * @param device figures of the device
 * @param radios by radio number
 * @param networks one for each row about a network
 */
record PollPlan(
        List<String> profiles,
        List<Slot> fast,
        List<Figure> device,
        SortedMap<Integer, RadioPlan> radios,
        List<NetworkPlan> networks,
        Map<Fact, String> facts) {

    /** One radio: its names, and its figures. */
    record RadioPlan(RadioFacts facts, List<Figure> figures) {}

    /** One row about a network: several may carry the same SSID on different radios. */
    record NetworkPlan(String ssid, List<Figure> figures) {}

    Facts asFacts() {
        return new Facts(
                facts,
                radios.values().stream().map(RadioPlan::facts).toList(),
                networks.stream().map(NetworkPlan::ssid).distinct().toList());
    }

    /** Every slot that the plan needs, at each round or not. */
    Set<Slot> slots() {
        Set<Slot> slots = new HashSet<>(fast);
        Stream.of(
                        device.stream(),
                        radios.values().stream().flatMap(r -> r.figures().stream()),
                        networks.stream().flatMap(n -> n.figures().stream()))
                .flatMap(figures -> figures)
                .forEach(figure -> {
                    slots.addAll(figure.parts());
                    slots.addAll(figure.whole());
                });
        return slots;
    }

    /** Before a round. */
    void expect() {
        fast.forEach(Slot::expect);
    }

    /** Whether the device lacks an object that it had when the plan was made. */
    boolean isOutdated() {
        for (Slot slot : fast) {
            if (slot.gone) {
                return true;
            }
        }
        return false;
    }

    /** Puts all counters on their tracks. */
    void track(Moment now) {
        track(device, now);
        radios.values().forEach(radio -> track(radio.figures(), now));
        networks.forEach(network -> track(network.figures(), now));
    }

    private static void track(List<Figure> figures, Moment now) {
        for (Figure figure : figures) {
            if (figure.isCounter()) {
                figure.track(now);
            }
        }
    }
}
