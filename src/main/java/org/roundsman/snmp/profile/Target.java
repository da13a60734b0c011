package org.roundsman.snmp.profile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Subject;

/** What a value is for: a metric, a fact, or a name of a radio or network. */
public sealed interface Target {

    /** A figure. */
    record OfMetric(Metric metric) implements Target {
        @Override
        public String key() {
            return metric.key();
        }

        @Override
        public Subject subject() {
            return metric.subject();
        }
    }

    /** Something the device says about itself. */
    record OfFact(Fact fact) implements Target {
        @Override
        public String key() {
            return fact.key();
        }

        @Override
        public Subject subject() {
            return Subject.DEVICE;
        }
    }

    /** What a radio or network is called. */
    enum Name implements Target {
        RADIO_LABEL("radio.label", Subject.RADIO),
        RADIO_MAC("radio.mac", Subject.RADIO),
        SSID("network.ssid", Subject.NETWORK);

        private final String key;
        private final Subject subject;

        Name(String key, Subject subject) {
            this.key = key;
            this.subject = subject;
        }

        @Override
        public String key() {
            return key;
        }

        @Override
        public Subject subject() {
            return subject;
        }
    }

    /** Its name in profiles. */
    String key();

    Subject subject();

    /** Whether a text is wanted, not a figure. */
    default boolean isText() {
        return !(this instanceof OfMetric);
    }

    /** Every target that a profile may name. Round trip and uptime are measured without one. */
    static List<Target> all() {
        List<Target> all = new ArrayList<>();
        Arrays.stream(Metric.values())
                .filter(m -> m != Metric.ROUND_TRIP && m != Metric.UPTIME)
                .forEach(m -> all.add(new OfMetric(m)));
        Arrays.stream(Fact.values()).forEach(f -> all.add(new OfFact(f)));
        all.addAll(List.of(Name.values()));
        return all;
    }

    static Optional<Target> byKey(String key) {
        return all().stream().filter(t -> t.key().equals(key)).findFirst();
    }
}
