package org.roundsman.web.profiles;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.profiles.Proposal.Meaning;

/**
 * What a person says the columns of a table are.
 *
 * @param column their numbers
 * @param key what each is, or empty
 * @param as how each is read, or empty for the usual
 * @param index what each number of the index says
 * @param into id of the profile that the lines go into, or empty for a new one
 */
record ProposeForm(
        @RestForm String group,
        @RestForm List<String> column,
        @RestForm List<String> key,
        @RestForm List<String> as,
        @RestForm List<String> index,
        @RestForm String kind,
        @RestForm String into) {

    /** By column; the first of two with the same key counts. */
    Map<Integer, Meaning> meanings() {
        Map<Integer, Meaning> meanings = new TreeMap<>();
        int count = column == null || key == null || as == null
                ? 0
                : Math.min(column.size(), Math.min(key.size(), as.size()));
        for (int i = 0; i < count; i++) {
            String wanted = key.get(i);
            boolean taken = meanings.values().stream().anyMatch(m -> m.key().equals(wanted));
            if (!wanted.isEmpty() && !taken && column.get(i).matches("\\d{1,9}")) {
                meanings.put(Integer.valueOf(column.get(i)), new Meaning(wanted, as.get(i)));
            }
        }
        return meanings;
    }

    long intoId() {
        return into != null && into.matches("\\d{1,15}") ? Long.parseLong(into) : 0;
    }
}
