package org.roundsman.notices;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** What a person entered about notices cannot be taken; nothing was changed. */
public final class NoticeRejected extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final LinkedHashMap<String, String> faults;

    /**
     * @param faults by field, what is wrong and what would be right; the empty name stands for the whole
     */
    public NoticeRejected(Map<String, String> faults) {
        super(faults.toString());
        this.faults = new LinkedHashMap<>(faults);
    }

    static NoticeRejected of(String field, String fault) {
        return new NoticeRejected(Map.of(field, fault));
    }

    /** By field name, in the order found. */
    public Map<String, String> faults() {
        return Collections.unmodifiableMap(faults);
    }
}
