package org.roundsman.snmp.walk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.roundsman.snmp.UnusedGroup;
import org.roundsman.snmp.Walk;
import org.snmp4j.smi.OID;

/**
 * Finds the tables and the groups of scalars in a walk without any MIB module: a row object ends in 1, and its columns
 * have the same indexes (RFC 2578 section 7.1.12 and 7.7); a scalar's instance ends in 0.
 */
public final class WalkGroups {

    private static final int MOST_SAMPLES = 4;
    private static final int SHORTEST_TABLE = 6;

    private final Walk walk;
    private final List<UnusedGroup> groups = new ArrayList<>();

    private WalkGroups(Walk walk) {
        this.walk = walk;
    }

    /** Groups of the variables that pass, by their names. */
    public static List<UnusedGroup> of(Walk walk, Predicate<OID> wanted) {
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < walk.size(); i++) {
            if (wanted.test(walk.oid(i))) {
                places.add(i);
            }
        }
        WalkGroups found = new WalkGroups(walk);
        found.below(new OID(), places);
        return found.groups;
    }

    private void below(OID prefix, List<Integer> places) {
        if (places.isEmpty() || table(prefix, places)) {
            return;
        }
        List<Integer> scalars = new ArrayList<>();
        List<Integer> leaves = new ArrayList<>();
        TreeMap<Long, List<Integer>> deeper = new TreeMap<>();
        for (int place : places) {
            OID oid = walk.oid(place);
            int rest = oid.size() - prefix.size();
            if (rest == 2 && oid.last() == 0) {
                scalars.add(place);
            } else if (rest <= 1) {
                leaves.add(place);
            } else {
                deeper.computeIfAbsent(oid.getUnsigned(prefix.size()), n -> new ArrayList<>())
                        .add(place);
            }
        }
        group(prefix, scalars, false);
        group(prefix, leaves, false);
        deeper.forEach((number, some) -> below(new OID(prefix).append((int) (long) number), some));
    }

    private void group(OID prefix, List<Integer> places, boolean table) {
        if (!places.isEmpty()) {
            List<UnusedGroup.Column> columns = places.stream()
                    .map(place -> {
                        OID oid = walk.oid(place);
                        int number = oid.get(Math.min(prefix.size(), oid.size() - 1));
                        return column(oid, number, List.of(place));
                    })
                    .toList();
            groups.add(new UnusedGroup(
                    prefix.toDottedString(), StandardNames.nearest(prefix), table, columns, 1, List.of()));
        }
    }

    /** Takes it for a table when at least two columns, and most of them, have the same rows. */
    private boolean table(OID prefix, List<Integer> places) {
        if (prefix.size() < SHORTEST_TABLE || prefix.last() != 1) {
            return false;
        }
        TreeMap<Long, List<Integer>> columns = new TreeMap<>();
        Map<Long, Set<OID>> rows = new HashMap<>();
        for (int place : places) {
            OID oid = walk.oid(place);
            int rest = oid.size() - prefix.size() - 1;
            if (rest < 1) {
                return false;
            }
            long column = oid.getUnsigned(prefix.size());
            columns.computeIfAbsent(column, n -> new ArrayList<>()).add(place);
            rows.computeIfAbsent(column, n -> new HashSet<>()).add(new OID(oid.getValue(), prefix.size() + 1, rest));
        }
        if (!isTable(rows.values())) {
            return false;
        }
        int longest = rows.values().stream().mapToInt(Set::size).max().orElse(0);
        List<UnusedGroup.Column> shown = columns.entrySet().stream()
                .map(c ->
                        column(new OID(prefix).append((int) (long) c.getKey()), (int) (long) c.getKey(), c.getValue()))
                .toList();
        List<String> indexes = rows.get(columns.firstKey()).stream()
                .sorted()
                .limit(MOST_SAMPLES)
                .map(OID::toDottedString)
                .toList();
        groups.add(
                new UnusedGroup(prefix.toDottedString(), StandardNames.nearest(prefix), true, shown, longest, indexes));
        return true;
    }

    /**
     * Whether columns with these rows make a table: at least two, and most of them, have at least half of their rows in
     * common, since rows come and go while a device is read.
     */
    private static boolean isTable(Collection<Set<OID>> columns) {
        Set<OID> longest =
                columns.stream().max(Comparator.comparingInt(Set::size)).orElse(Set.of());
        long alike = columns.stream()
                .filter(rows -> 2 * rows.stream().filter(longest::contains).count() >= longest.size())
                .count();
        boolean scalars = columns.stream().allMatch(rows -> rows.equals(Set.of(new OID("0"))));
        return !scalars && alike >= 2 && alike * 2 >= columns.size() && !areTablesThemselves(longest);
    }

    /** Several tables of one shape below each other: what looks like their index is a row object and several columns. */
    private static boolean areTablesThemselves(Set<OID> rows) {
        boolean deep = rows.stream().allMatch(row -> row.size() >= 3 && row.get(0) == 1);
        return deep && rows.stream().map(row -> row.get(1)).distinct().count() > 1;
    }

    private UnusedGroup.Column column(OID oid, int number, List<Integer> places) {
        List<String> samples = places.stream()
                .limit(MOST_SAMPLES)
                .map(place -> walk.shown(place).value())
                .toList();
        return new UnusedGroup.Column(
                oid.toDottedString(), number, walk.value(places.get(0)).getSyntaxString(), samples);
    }
}
