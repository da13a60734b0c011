package org.roundsman.web.profiles;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.profiles.StoredWalk;
import org.roundsman.snmp.WalkReading;
import org.roundsman.snmp.WalkReading.Explained;
import org.roundsman.web.page.Words;

/**
 * What a text makes of a walk, beside what the profiles in use make of it.
 *
 * @param missing what the text's own lines do not give, and why
 */
record Tried(String walk, String now, String then, List<Line> lines, List<String> missing, List<String> remarks) {

    /** One measurement; empty where there is none. */
    record Line(String who, String key, String now, String then, String from) {
        public boolean differs() {
            return !now.equals(then);
        }
    }

    static Tried of(StoredWalk walk, WalkReading now, WalkReading then, String name) {
        Map<String, Line> lines = new LinkedHashMap<>();
        for (Explained e : then.given()) {
            lines.put(e.who() + "\n" + e.key(), new Line(e.who(), e.key(), "", value(e), from(e)));
        }
        for (Explained e : now.given()) {
            lines.merge(
                    e.who() + "\n" + e.key(),
                    new Line(e.who(), e.key(), value(e), "", ""),
                    (tried, used) -> new Line(tried.who(), tried.key(), used.now(), tried.then(), tried.from()));
        }
        List<Line> sorted = new ArrayList<>(lines.values());
        sorted.sort(java.util.Comparator.comparing(line -> !line.differs()));
        List<String> missing = then.missing().stream()
                .filter(e -> e.profile().equals(name))
                .map(e -> "line " + e.line() + ", " + e.key() + " of " + e.who() + ": " + e.why())
                .toList();
        return new Tried(
                walk.name(),
                String.join(", ", now.visit().profiles()),
                String.join(", ", then.visit().profiles()),
                sorted,
                missing,
                then.visit().remarks());
    }

    public String summary() {
        long differing = lines.stream().filter(Line::differs).count();
        return differing == 0
                ? "Nothing differs."
                : Words.many(differing, "measurement differs", "measurements differ") + ".";
    }

    private static String value(Explained e) {
        return e.value() + (e.unit().isEmpty() ? "" : "\u00a0" + e.unit());
    }

    private static String from(Explained e) {
        return e.line() == 0 ? e.why() : e.profile() + ", line " + e.line();
    }
}
