package org.roundsman.web.profiles;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.roundsman.profiles.ProfileCases.CaseOutcome;
import org.roundsman.profiles.StoredWalk;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.RawAnswer;
import org.roundsman.snmp.UnusedGroup;
import org.roundsman.snmp.WalkReading;
import org.roundsman.snmp.WalkReading.Explained;
import org.roundsman.web.page.Words;

/**
 * A stored walk on the workbench.
 *
 * @param unread measurements that no profile that applies has a line for
 * @param outcome how its test case ends, or null when it is none
 */
record WalkView(
        StoredWalk walk,
        List<Matching> applying,
        List<Matching> others,
        List<Line> given,
        List<Line> missing,
        List<Line> passedOver,
        String unread,
        List<String> remarks,
        List<Group> unused,
        CaseOutcome outcome,
        boolean writes) {

    private static final int MOST_RAW = 6;
    private static final int MOST_GROUPS = 200;

    /**
     * A profile, and why it applies or not.
     *
     * @param more further conditions that are not shown
     */
    record Matching(String profile, String evidence, int more) {}

    private static List<Matching> matching(WalkReading reading, boolean applies) {
        return reading.matches().stream()
                .filter(m -> m.applies() == applies)
                .map(m -> new Matching(
                        m.profile(),
                        m.evidence().get(0).replaceFirst("^(yes|no): ", ""),
                        applies ? 0 : m.evidence().size() - 1))
                .toList();
    }

    /** One line of a profile, and what became of it. */
    record Line(String who, String key, String value, String from, String why, List<RawAnswer> said, int more) {
        static Line of(Explained e) {
            return new Line(
                    e.who(),
                    e.key(),
                    e.value() + (e.unit().isEmpty() ? "" : "\u00a0" + e.unit()),
                    e.line() == 0 ? "" : e.profile() + ", line " + e.line(),
                    e.why(),
                    e.raw().stream().limit(MOST_RAW).toList(),
                    Math.max(0, e.raw().size() - MOST_RAW));
        }
    }

    /** Objects that nobody reads. */
    record Group(String oid, String name, String size, boolean table, String sample) {
        static Group of(UnusedGroup group) {
            String size = group.table()
                    ? Words.many(group.columns().size(), "column", "columns") + ", "
                            + Words.many(group.rows(), "row", "rows")
                    : Words.many(group.columns().size(), "object", "objects");
            UnusedGroup.Column first = group.columns().get(0);
            String sample = first.samples().isEmpty() ? "" : first.samples().get(0);
            return new Group(
                    group.oid(),
                    group.name(),
                    size,
                    group.table(),
                    sample.length() > 60 ? sample.substring(0, 60) + "…" : sample);
        }
    }

    static WalkView of(StoredWalk walk, WalkReading reading, CaseOutcome outcome, boolean writes) {
        Set<String> named = new TreeSet<>();
        reading.explained().forEach(e -> named.add(e.key()));
        List<String> unread = new ArrayList<>(ProfileSet.measurable());
        unread.removeAll(named);
        List<UnusedGroup> groups = new ArrayList<>(reading.unused());
        // A maker's own objects are what a profile is written for.
        groups.sort(java.util.Comparator.comparing(g -> !g.oid().startsWith("1.3.6.1.4.1.")));
        return new WalkView(
                walk,
                matching(reading, true),
                matching(reading, false),
                reading.given().stream().map(Line::of).toList(),
                once(reading.missing()),
                reading.explained().stream()
                        .filter(e -> e.fate() == WalkReading.Fate.PASSED_OVER)
                        .map(Line::of)
                        .toList(),
                String.join(", ", unread),
                reading.visit().remarks(),
                groups.stream().limit(MOST_GROUPS).map(Group::of).toList(),
                outcome,
                writes);
    }

    /** Several lines that give the same nothing are one to people: the first, which is the one to mend. */
    private static List<Line> once(List<Explained> missing) {
        Set<String> seen = new TreeSet<>();
        return missing.stream()
                .filter(e -> seen.add(e.key() + " of " + e.who()))
                .map(Line::of)
                .toList();
    }

    public String taken() {
        return Times.of(walk.takenAt());
    }

    public String later() {
        return walk.laterAt().map(Times::of).orElse("");
    }

    public String size() {
        return Words.many(walk.variables(), "variable", "variables");
    }
}
