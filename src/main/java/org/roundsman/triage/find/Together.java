package org.roundsman.triage.find;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.CauseKind;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Finding;
import org.roundsman.triage.Sureness;

/**
 * Lost elements of one sort that hang on the same device, or of which nobody knows on what they hang, and that were lost at
 * one time: three of them, or half of all, are hardly chance. Of what they share we have no alarm, so the first of them
 * leads and the others point to it. Mostly a group of one.
 */
record Together(Scene scene, List<Suspicion> members) {

    private static final int MANY = 3;
    private static final int SOME = 2;

    private record Sort(long anchor, CauseKind cause, DeviceKind kind) {}

    /** Puts each into one group, in order. */
    static List<Together> of(Scene scene, List<Suspicion> judged) {
        Map<Sort, List<Suspicion>> sorts = new LinkedHashMap<>();
        List<Together> groups = new ArrayList<>();
        for (Suspicion each : judged) {
            if (each.alike()) {
                Sort sort = new Sort(
                        anchor(scene, each.look()), each.cause(), each.look().kind());
                sorts.computeIfAbsent(sort, made -> new ArrayList<>()).add(each);
            } else {
                groups.add(new Together(scene, List.of(each)));
            }
        }
        sorts.forEach((sort, alike) -> clusters(alike).forEach(cluster -> {
            if (cluster.size() >= MANY || cluster.size() >= SOME && 2 * cluster.size() >= siblings(scene, sort)) {
                groups.add(new Together(scene, leadFirst(cluster)));
            } else {
                cluster.forEach(each -> groups.add(new Together(scene, List.of(each))));
            }
        }));
        return groups;
    }

    private static long anchor(Scene scene, DeviceLook look) {
        return scene.above(look.deviceId()).map(TreeNode::deviceId).orElse(0L);
    }

    private static long siblings(Scene scene, Sort sort) {
        return scene.on(sort.anchor()).stream()
                .filter(look -> look.kind() == sort.kind())
                .count();
    }

    /** Those whose last answers all lie before the first miss of any: they may have been lost at the same moment. */
    private static List<List<Suspicion>> clusters(List<Suspicion> alike) {
        List<List<Suspicion>> clusters = new ArrayList<>();
        List<Suspicion> sorted = alike.stream()
                .sorted(Comparator.comparing(
                        (Suspicion each) -> each.look().lostSince().orElseThrow()))
                .toList();
        for (Suspicion each : sorted) {
            Optional<List<Suspicion>> last =
                    clusters.isEmpty() ? Optional.empty() : Optional.of(clusters.get(clusters.size() - 1));
            if (last.isPresent() && sameTime(last.get().get(0).look(), each.look())) {
                last.get().add(each);
            } else {
                clusters.add(new ArrayList<>(List.of(each)));
            }
        }
        return clusters;
    }

    private static boolean sameTime(DeviceLook first, DeviceLook other) {
        Instant missed = first.lostSince().orElseThrow();
        boolean near = !other.lostSince()
                .orElseThrow()
                .isAfter(missed.plus(first.interval()).plus(other.interval()));
        return near && !other.heardAfter(missed.plus(Scene.SLACK));
    }

    private static List<Suspicion> leadFirst(List<Suspicion> cluster) {
        return cluster.stream()
                .sorted(Comparator.comparing((Suspicion each) -> each.look().silent() ? 0 : 1)
                        .thenComparing(each -> each.look().lostSince().orElseThrow())
                        .thenComparing(each -> each.look().deviceId()))
                .toList();
    }

    /** Of the alarms of its members; one that only misses rounds so far has none, unless it explains a silent one. */
    List<Finding> findings() {
        Suspicion lead = members.get(0);
        if (members.size() == 1) {
            return hasAlarm(lead) ? List.of(lead.finding(Optional.empty(), Set.of())) : List.of();
        }
        boolean early = members.stream().anyMatch(each -> !each.look().silent());
        List<Finding> findings = new ArrayList<>();
        Set<Long> all = new HashSet<>();
        members.forEach(each -> {
            all.add(each.look().deviceId());
            each.explains().forEach(below -> all.add(below.deviceId()));
        });
        CauseKind cause = cause();
        for (Suspicion each : members) {
            if (hasAlarm(each)) {
                boolean leads = each.equals(lead);
                List<String> evidence = leads ? evidence() : following(each);
                Suspicion said = each.saying(cause, evidence, sureness(each));
                Suspicion timed = early ? said.unsettled() : said;
                findings.add(timed.finding(leads ? Optional.empty() : Optional.of(lead.key()), leads ? all : Set.of()));
            }
        }
        return findings;
    }

    private boolean hasAlarm(Suspicion each) {
        return each.look().silent() || each.explains().stream().anyMatch(DeviceLook::silent);
    }

    private CauseKind cause() {
        CauseKind alone = members.get(0).cause();
        return alone == CauseKind.DEVICE_LOST || alone == CauseKind.SWITCH_LOST ? CauseKind.NOT_SURE : alone;
    }

    private Sureness sureness(Suspicion each) {
        return cause() == CauseKind.NOT_SURE ? Sureness.OPEN : each.sureness();
    }

    private List<String> evidence() {
        Suspicion lead = members.get(0);
        List<String> evidence = new ArrayList<>(lead.evidence());
        DeviceLook look = lead.look();
        long anchor = anchor(scene, look);
        List<DeviceLook> siblings = Words.only(scene.on(anchor), look.kind());
        Optional<DeviceLook> holder = scene.look(anchor);
        String where = holder.map(h -> " on " + h.name()).orElse(" whose switch port is not known");
        evidence.add(members.size() + " of " + Words.counted(siblings.size(), look.kind()) + where
                + " were lost together since "
                + scene.times()
                        .minute(Scene.firstMiss(
                                members.stream().map(Suspicion::look).toList()))
                + ": that speaks for something that they share.");
        long others = siblings.stream().filter(each -> each.standing().heard()).count();
        if (others > 0) {
            evidence.add((others == 1 ? "The other one answers" : "The other " + others + " answer")
                    + ": that speaks against what they hang on as a whole.");
        }
        evidence.add(advice(holder.map(DeviceLook::name).orElse("")));
        return evidence;
    }

    private String advice(String holder) {
        return switch (cause()) {
            case PORT_NOT_DELIVERING -> "Look at the power supply of " + holder + " first.";
            case LINK_DOWN, NO_POWER_DRAWN, SWITCH_POWER ->
                "Look for a power strip, a patch panel or a cable duct that they share.";
            default ->
                holder.isEmpty()
                        ? "It may be a switch that is not watched, its power, or a change made to all of them."
                        : "It may be a network (VLAN), an update or a setting that they share.";
        };
    }

    private List<String> following(Suspicion each) {
        List<String> evidence = new ArrayList<>(each.evidence());
        evidence.add("Lost together with " + members.get(0).look().name() + ", whose line tells more.");
        return evidence;
    }
}
