package org.roundsman.claims;

import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.fleet.InputRejected;
import org.roundsman.system.StorableText;

/** Collects what is wrong with an entry, so that a person sees all of it at once. */
final class EntryCheck {

    private final Map<String, String> faults = new LinkedHashMap<>();

    /** Notes the fault unless it holds; the first fault of a field stays. */
    EntryCheck that(String field, boolean holds, String fault) {
        if (!holds) {
            faults.putIfAbsent(field, fault);
        }
        return this;
    }

    EntryCheck text(String field, String value, int least, int most) {
        that(field, value != null && value.strip().length() >= least, "must not be empty");
        that(field, value == null || value.length() <= most, "at most " + most + " characters");
        that(
                field,
                value == null || value.chars().noneMatch(c -> c < ' ' && c != '\n' && c != '\r' && c != '\t'),
                "holds a control character");
        return that(field, value == null || StorableText.keeps(value), "holds half of a character; type it anew");
    }

    /**
     * @throws InputRejected when there is a fault
     */
    void done() {
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
    }

    static InputRejected refused(String field, String fault) {
        return new InputRejected(Map.of(field, fault));
    }
}
