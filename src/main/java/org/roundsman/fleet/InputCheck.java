package org.roundsman.fleet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.system.StorableText;

/** Collects what is wrong with an entry, so that a person sees all of it at once. */
public final class InputCheck {

    private final Map<String, String> faults = new LinkedHashMap<>();

    /** Notes the fault unless it holds; the first fault of a field stays. */
    public void that(String field, boolean holds, String fault) {
        if (!holds) {
            faults.putIfAbsent(field, fault);
        }
    }

    /** A text of so many characters that the database keeps, without control characters other than line breaks and tabs. */
    public void text(String field, String value, int least, int most) {
        that(field, value != null && value.strip().length() >= least, "must not be empty");
        that(field, value == null || value.length() <= most, "at most " + most + " characters");
        that(
                field,
                value == null || value.chars().noneMatch(c -> c < ' ' && c != '\n' && c != '\r' && c != '\t'),
                "holds a control character");
        that(field, value == null || StorableText.keeps(value), "holds half of a character; type it anew");
    }

    /** A missing number is not a fault here. */
    public void range(String field, Integer value, int least, int most) {
        that(
                field,
                value == null || value >= least && value <= most,
                most == Integer.MAX_VALUE ? "at least " + least : "from " + least + " to " + most);
    }

    /** What was found so far, in the order found. */
    public Map<String, String> faults() {
        return Collections.unmodifiableMap(faults);
    }

    /**
     * @throws InputRejected when there is a fault
     */
    public void done() {
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
    }
}
