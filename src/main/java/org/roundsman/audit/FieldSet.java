package org.roundsman.audit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.roundsman.audit.AuditEntry.FieldChange;

/** The fields of a subject at one time, by name: two of them make the changes of an entry. Never holds a secret. */
public final class FieldSet {

    private final Map<String, String> fields = new LinkedHashMap<>();

    /** Adds a field; null counts as empty. */
    public FieldSet with(String field, Object value) {
        fields.put(field, Objects.toString(value, ""));
        return this;
    }

    /** What differs between the two, field by field in the order they were added. */
    public static List<FieldChange> between(FieldSet before, FieldSet after) {
        Set<String> names = new LinkedHashSet<>(before.fields.keySet());
        names.addAll(after.fields.keySet());
        List<FieldChange> changes = new ArrayList<>();
        for (String name : names) {
            String old = before.fields.getOrDefault(name, "");
            String fresh = after.fields.getOrDefault(name, "");
            if (!old.equals(fresh)) {
                changes.add(new FieldChange(name, old, fresh));
            }
        }
        return changes;
    }

    /** All fields that hold something, as new. */
    public List<FieldChange> asNew() {
        return between(new FieldSet(), this);
    }
}
