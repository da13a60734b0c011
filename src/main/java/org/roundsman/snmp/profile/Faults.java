package org.roundsman.snmp.profile;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.roundsman.snmp.ProfileFault;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.nodes.Node;

/** Collects what is wrong with one profile file, so that a person can mend it all at once. */
final class Faults {

    private final String file;
    private final TreeMap<Integer, List<ProfileFault>> found = new TreeMap<>();

    Faults(String file) {
        this.file = file;
    }

    void add(Node where, String key, String what) {
        add(where.getStartMark(), key, what);
    }

    void add(Mark where, String key, String what) {
        int line = where == null ? 1 : where.getLine() + 1;
        found.computeIfAbsent(line, l -> new ArrayList<>()).add(new ProfileFault(file, line, key, what));
    }

    boolean isEmpty() {
        return found.isEmpty();
    }

    /** All of them, by line. */
    List<ProfileFault> all() {
        return found.values().stream().flatMap(List::stream).toList();
    }

    /** " Did you mean x?" when one of the known words is near, else the list of them when it is short. */
    static String hint(String word, Collection<String> known) {
        String nearest = known.stream()
                .min(Comparator.comparingInt(k -> distance(word, k)))
                .orElse("");
        if (distance(word, nearest) <= Math.max(2, word.length() / 4)) {
            return "; did you mean " + nearest + "?";
        }
        return known.size() <= 12 ? "; possible are " + String.join(", ", known) : "";
    }

    /** Levenshtein's distance. */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
