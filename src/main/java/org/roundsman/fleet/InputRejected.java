package org.roundsman.fleet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** What a person entered cannot be taken; nothing was changed. */
public final class InputRejected extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final LinkedHashMap<String, String> faults;

    /**
     * @param faults by field name: what is wrong and what would be right
     */
    public InputRejected(Map<String, String> faults) {
        super(faults.toString());
        this.faults = new LinkedHashMap<>(faults);
    }

    /** By field name, in the order found. */
    public Map<String, String> faults() {
        return Collections.unmodifiableMap(faults);
    }
}
