package org.roundsman.measure;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The figures of one subject at one time. What was not measured is missing: it has no value, and is never zero.
 * Immutable; safe to share between threads.
 */
public final class Values {

    private static final Map<Subject, Integer> FIRST = new EnumMap<>(Subject.class);
    private static final Map<Subject, Integer> SIZE = new EnumMap<>(Subject.class);
    private static final Map<Subject, Values> NONE = new EnumMap<>(Subject.class);

    static {
        for (Subject subject : Subject.values()) {
            FIRST.put(subject, Metric.of(subject).get(0).ordinal());
            SIZE.put(subject, Metric.of(subject).size());
            NONE.put(subject, new Builder(subject).build());
        }
    }

    private final Subject subject;
    private final double[] figures;

    private Values(Subject subject, double[] figures) {
        this.subject = subject;
        this.figures = figures;
    }

    /** Nothing measured. */
    public static Values none(Subject subject) {
        return NONE.get(subject);
    }

    public static Builder builder(Subject subject) {
        return new Builder(subject);
    }

    public Subject subject() {
        return subject;
    }

    public boolean has(Metric metric) {
        return !Double.isNaN(raw(metric));
    }

    public OptionalDouble get(Metric metric) {
        double value = raw(metric);
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * The figure, or NaN where it is missing: for the hot path.
     *
     * @throws IllegalArgumentException when the metric belongs to another subject
     */
    public double raw(Metric metric) {
        return figures[index(subject, metric)];
    }

    private static int index(Subject subject, Metric metric) {
        if (metric.subject() != subject) {
            throw new IllegalArgumentException(metric.key() + " is not measured of a " + subject);
        }
        return metric.ordinal() - FIRST.get(subject);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Values that && subject == that.subject && Arrays.equals(figures, that.figures);
    }

    @Override
    public int hashCode() {
        return 31 * subject.hashCode() + Arrays.hashCode(figures);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("{");
        for (Metric metric : Metric.of(subject)) {
            if (has(metric)) {
                text.append(text.length() > 1 ? ", " : "")
                        .append(metric.column())
                        .append('=')
                        .append(raw(metric));
            }
        }
        return text.append('}').toString();
    }

    /** Collects figures; not safe between threads. */
    public static final class Builder {
        private final Subject subject;
        private double[] figures;

        private Builder(Subject subject) {
            this.subject = subject;
            this.figures = new double[SIZE.get(subject)];
            Arrays.fill(figures, Double.NaN);
        }

        /** Sets a figure. What is not finite or lies outside the metric's range becomes missing. */
        public Builder set(Metric metric, double value) {
            figures[index(subject, metric)] = metric.admits(value) ? value : Double.NaN;
            return this;
        }

        public boolean has(Metric metric) {
            return !Double.isNaN(figures[index(subject, metric)]);
        }

        public Values build() {
            Values built = new Values(subject, figures);
            figures = figures.clone();
            return built;
        }
    }
}
