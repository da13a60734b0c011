package org.roundsman.snmp.profile;

import java.util.List;
import java.util.Map;
import org.snmp4j.smi.OID;

/**
 * One line of a profile: what is measured, and from which objects.
 *
 * @param target what the value is for
 * @param parts objects whose values are added up: instances for a scalar, columns in a table
 * @param whole what the parts are a share of, in per cent; empty when they are no share
 * @param form how raw values are read
 * @param scaling applied to numbers
 * @param slow asked with the slow facts only, and remembered in between
 * @param fallback only used where nothing else gives the target
 * @param line where it stands in its file, counted from 1
 */
public record Measure(
        Target target,
        List<OID> parts,
        List<OID> whole,
        Form form,
        Scaling scaling,
        boolean slow,
        boolean fallback,
        int line) {

    /**
     * From a raw number to a figure.
     *
     * @param values figures by raw number, the others being missing; empty when every number counts
     */
    public record Scaling(double scale, double offset, Map<Long, Double> values) {
        /** Leaves a number as it is. */
        public static final Scaling NONE = new Scaling(1, 0, Map.of());

        public double apply(double raw) {
            if (!values.isEmpty()) {
                return values.getOrDefault((long) raw, Double.NaN);
            }
            return raw * scale + offset;
        }
    }

    public boolean isShare() {
        return !whole.isEmpty();
    }

    /** All objects that it is made of. */
    public List<OID> objects() {
        return java.util.stream.Stream.concat(parts.stream(), whole.stream()).toList();
    }
}
