package org.roundsman.web.page;

import java.util.Map;

/**
 * What is wrong in a form, by field.
 *
 * @param byField in plain words; the empty name stands for the form as a whole
 */
public record Faults(Map<String, String> byField) {

    public static final Faults NONE = new Faults(Map.of());

    /** The one fault of one field. */
    public static Faults of(String field, String text) {
        return new Faults(Map.of(field, text));
    }

    public boolean none() {
        return byField.isEmpty();
    }

    public boolean in(String field) {
        return byField.containsKey(field);
    }

    /** The field's fault, or empty. */
    public String at(String field) {
        return byField.getOrDefault(field, "");
    }
}
