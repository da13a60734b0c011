package org.roundsman.web.edit;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;

/** Reads what a form sent, and collects what cannot be read before the fleet looks at the rest. */
public final class Entry {

    private final Map<String, String> faults = new LinkedHashMap<>();

    /** A whole number; a fault and -1 when it is none. */
    public int number(String field, String text) {
        try {
            return Integer.parseInt(text.strip());
        } catch (NumberFormatException e) {
            fault(field, "must be a whole number, without a unit");
            return -1;
        }
    }

    /** An id out of a list, or null when nothing was chosen. */
    public Long id(String field, String text) {
        try {
            return text.isBlank() ? null : Long.valueOf(text.strip());
        } catch (NumberFormatException e) {
            fault(field, "choose one of the list");
            return null;
        }
    }

    /** Megabit per second as entered, as kbit/s; null when empty. */
    public Integer kbit(String field, String text) {
        try {
            return text.isBlank()
                    ? null
                    : new BigDecimal(text.strip().replace(',', '.'))
                            .scaleByPowerOfTen(3)
                            .intValueExact();
        } catch (ArithmeticException | NumberFormatException e) {
            fault(field, "must be a number of Mb/s, such as 50 or 2.5");
            return null;
        }
    }

    /** Notes what is wrong; the first fault of a field stays. */
    public void fault(String field, String text) {
        faults.putIfAbsent(field, text);
    }

    /** By field, in the order found. */
    public Map<String, String> faults() {
        return faults;
    }

    /** Whether there is no fault. */
    public boolean readable() {
        return faults.isEmpty();
    }

    /** As entered, never null. */
    public static String text(String value) {
        return value == null ? "" : value;
    }
}
