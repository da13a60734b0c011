package org.roundsman.rules.fold;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import org.roundsman.measure.Metric;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Values;

/**
 * What is remembered of a device for ever: the fastest speed of its uplink port, and what each radio showed while it was
 * on the air. Another unit in its place (another serial number) starts anew. Used by one thread.
 */
public final class Memory {

    private static final int CHANNEL = 1;
    private static final int NOISE = 2;
    private static final int UTILISATION = 4;
    private static final int AIR = NOISE | UTILISATION;

    private final Map<Integer, Integer> radios;
    private double fastest;
    private String serial;
    private boolean changed;

    /**
     * @param fastest in Mb/s, not a number where none was seen
     * @param radios by number: what it showed, as bits
     * @param serial of the unit, or empty
     */
    public Memory(double fastest, Map<Integer, Integer> radios, String serial) {
        this.fastest = fastest;
        this.radios = new TreeMap<>(radios);
        this.serial = serial;
    }

    public static Memory none() {
        return new Memory(Double.NaN, Map.of(), "");
    }

    public Memory copy() {
        return new Memory(fastest, radios, serial);
    }

    public double fastest() {
        return fastest;
    }

    public Map<Integer, Integer> radios() {
        return new HashMap<>(radios);
    }

    Iterable<Integer> radioNumbers() {
        return radios.keySet();
    }

    public String serial() {
        return serial;
    }

    /** Whether there is something new since this was asked last. */
    public boolean takeChanged() {
        boolean was = changed;
        changed = false;
        return was;
    }

    void unit(String fresh) {
        if (!fresh.isEmpty() && !fresh.equals(serial)) {
            if (!serial.isEmpty()) {
                radios.clear();
                fastest = Double.NaN;
            }
            serial = fresh;
            changed = true;
        }
    }

    void speed(double megabits) {
        if (megabits > 0 && !(megabits <= fastest)) {
            fastest = megabits;
            changed = true;
        }
    }

    void radio(RadioReading radio) {
        int before = radios.getOrDefault(radio.number(), 0);
        int now = before | shows(radio.values());
        if (now != before) {
            radios.put(radio.number(), now);
            changed = true;
        }
    }

    /**
     * Whether a radio that this is known of is off.
     *
     * @param now what the round brought of it, null where it is missing
     * @param coarse the round was made from quarter hours, which hold no channels
     */
    boolean off(int number, Values now, boolean coarse) {
        int known = radios.getOrDefault(number, 0) & (coarse ? AIR : ~0);
        if (known == 0) {
            return false;
        }
        int shows = now == null ? 0 : shows(now);
        boolean noChannel = (known & CHANNEL) != 0 && (shows & CHANNEL) == 0;
        boolean hearsNothing = (known & AIR) != 0 && (shows & AIR) == 0;
        return noChannel || hearsNothing;
    }

    private static int shows(Values values) {
        return (values.has(Metric.CHANNEL) ? CHANNEL : 0)
                | (values.has(Metric.NOISE) ? NOISE : 0)
                | (values.has(Metric.UTILISATION) ? UTILISATION : 0);
    }
}
