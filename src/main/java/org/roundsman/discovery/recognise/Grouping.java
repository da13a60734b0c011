package org.roundsman.discovery.recognise;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Tells which addresses of one sweep belong to one device: by a serial number or base MAC address that nothing
 * contradicts, or by an engine ID together with name and start time. A value that two devices repeat which are
 * otherwise different proves nothing for either.
 */
public final class Grouping {

    private static final Duration SAME_START = Duration.ofSeconds(3);

    private final List<Answer> answers;
    private final int[] parent;
    private final String[] why;

    private Grouping(List<Answer> answers) {
        this.answers = answers;
        this.parent = new int[answers.size()];
        this.why = new String[answers.size()];
        for (int i = 0; i < parent.length; i++) {
            parent[i] = i;
            why[i] = "";
        }
    }

    /** Every answer is in exactly one group; groups and their answers keep the order of the answers. */
    public static List<Group> of(List<Answer> answers) {
        Grouping grouping = new Grouping(answers);
        for (Mark mark : List.of(Mark.SERIAL, Mark.BASE_MAC, Mark.ENGINE_ID)) {
            grouping.join(mark);
        }
        return grouping.groups();
    }

    private void join(Mark mark) {
        Map<String, List<Integer>> sharing = new LinkedHashMap<>();
        for (int i = 0; i < answers.size(); i++) {
            for (String value : answers.get(i).identity().at(mark)) {
                sharing.computeIfAbsent(value, v -> new ArrayList<>()).add(i);
            }
        }
        sharing.values().stream().filter(members -> members.size() > 1).forEach(members -> {
            if (isOne(mark, members)) {
                for (int member : members) {
                    unite(members.get(0), member, mark);
                }
            }
        });
    }

    /** Nothing that counts differs between any two of them, nor between what they are one with already. */
    private boolean isOne(Mark mark, List<Integer> members) {
        Set<Integer> roots = new HashSet<>();
        members.forEach(member -> roots.add(root(member)));
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < answers.size(); i++) {
            if (roots.contains(root(i))) {
                all.add(i);
            }
        }
        Map<Mark, Set<String>> seen = new EnumMap<>(Mark.class);
        Set<String> makers = new HashSet<>();
        for (int i : all) {
            Identity identity = answers.get(i).identity();
            for (Mark single : List.of(Mark.SERIAL, Mark.BASE_MAC)) {
                seen.computeIfAbsent(single, m -> new HashSet<>()).addAll(identity.at(single));
            }
            if (!identity.maker().isEmpty()) {
                makers.add(identity.maker());
            }
        }
        boolean contradicted = makers.size() > 1 || seen.values().stream().anyMatch(values -> values.size() > 1);
        return !contradicted && (mark != Mark.ENGINE_ID || isOneStart(members));
    }

    private boolean isOneStart(List<Integer> members) {
        Answer first = answers.get(members.get(0));
        return members.stream()
                .map(answers::get)
                .allMatch(answer -> answer.startedAt() != null
                        && first.startedAt() != null
                        && !answer.name().isEmpty()
                        && answer.name().equals(first.name())
                        && !answer.identity().contradicts(first.identity(), Mark.RADIO_MAC)
                        && Duration.between(first.startedAt(), answer.startedAt())
                                        .abs()
                                        .compareTo(SAME_START)
                                <= 0);
    }

    private void unite(int one, int other, Mark mark) {
        int a = root(one);
        int b = root(other);
        if (a != b) {
            int low = Math.min(a, b);
            parent[Math.max(a, b)] = low;
            why[low] = mark == Mark.ENGINE_ID ? "same engine ID, name and start" : "same " + mark.word();
        }
    }

    private int root(int at) {
        int root = at;
        while (parent[root] != root) {
            root = parent[root];
        }
        return root;
    }

    private List<Group> groups() {
        Map<Integer, List<Answer>> members = new LinkedHashMap<>();
        Map<Integer, Identity> identities = new HashMap<>();
        for (int i = 0; i < answers.size(); i++) {
            int root = root(i);
            members.computeIfAbsent(root, r -> new ArrayList<>()).add(answers.get(i));
            identities.merge(root, answers.get(i).identity(), Identity::with);
        }
        List<Group> groups = new ArrayList<>();
        members.forEach(
                (root, all) -> groups.add(new Group(all, identities.get(root), all.size() > 1 ? why[root] : "")));
        return groups;
    }
}
