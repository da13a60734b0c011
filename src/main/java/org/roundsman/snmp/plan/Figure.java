package org.roundsman.snmp.plan;

import java.util.List;
import org.roundsman.measure.Metric;
import org.roundsman.snmp.counter.Moment;
import org.roundsman.snmp.decode.Clocks;
import org.roundsman.snmp.decode.Numbers;
import org.roundsman.snmp.profile.Form;
import org.roundsman.snmp.profile.Measure;
import org.roundsman.snmp.profile.Table.Fold;

/**
 * One metric of one subject of one device, and the slots that it is made of.
 *
 * @param discontinuity slot of the counters' discontinuity time, or null
 * @param fold how several rows become one figure, or null: then parts and whole are added up
 */
record Figure(Metric metric, Measure measure, List<Slot> parts, List<Slot> whole, Slot discontinuity, Fold fold) {

    boolean isCounter() {
        return measure.form().isCounter();
    }

    void track(Moment now) {
        parts.forEach(slot -> slot.track(discontinuity, now));
        whole.forEach(slot -> slot.track(discontinuity, now));
    }

    /** Whether a counter of this figure is too narrow for a line of that speed, in bit/s, over the time that passed. */
    boolean mayHaveWrappedUnseen(double lineSpeed) {
        return measure.form() == Form.BIT_RATE
                && parts.stream().anyMatch(slot -> slot.track().mayHaveWrappedUnseen(lineSpeed / 8));
    }

    /** The figure, or NaN where a value that it needs is missing or makes no sense. */
    double value(long ourMillis) {
        if (fold != null) {
            return folded(ourMillis);
        }
        if (measure.isShare()) {
            boolean growth = measure.form() == Form.GROWTH;
            return Numbers.share(growth ? growth(parts) : level(parts), growth ? growth(whole) : level(whole));
        }
        return switch (measure.form()) {
            case RATE -> measure.scaling().apply(perSecond(parts));
            case BIT_RATE -> measure.scaling().apply(8 * perSecond(parts));
            case BSS_LOAD -> Numbers.bssLoad(level(parts));
            case DATE_AND_TIME ->
                parts.get(0).value == null ? Double.NaN : Clocks.offset(parts.get(0).value, ourMillis);
            default -> measure.scaling().apply(level(parts));
        };
    }

    private double folded(long ourMillis) {
        double sum = 0;
        double highest = Double.NEGATIVE_INFINITY;
        int count = 0;
        for (Slot slot : parts) {
            double one = new Figure(metric, measure, List.of(slot), List.of(), discontinuity, null).value(ourMillis);
            if (!Double.isNaN(one)) {
                sum += one;
                highest = Math.max(highest, one);
                count++;
            }
        }
        if (count == 0) {
            return Double.NaN;
        }
        return switch (fold) {
            case AVERAGE -> sum / count;
            // A sum that lacks a row would be a wrong figure.
            case SUM -> count == parts.size() ? sum : Double.NaN;
            case HIGHEST -> highest;
        };
    }

    private static double level(List<Slot> slots) {
        double sum = 0;
        for (Slot slot : slots) {
            sum += slot.value == null ? Double.NaN : Numbers.of(slot.value);
        }
        return sum;
    }

    private static double growth(List<Slot> slots) {
        double sum = 0;
        for (Slot slot : slots) {
            sum += slot.track().growth();
        }
        return sum;
    }

    private static double perSecond(List<Slot> slots) {
        double sum = 0;
        for (Slot slot : slots) {
            sum += slot.track().perSecond();
        }
        return sum;
    }
}
