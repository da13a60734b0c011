package org.roundsman.triage.find;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.CauseKind;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.EndedCause;
import org.roundsman.triage.Finding;
import org.roundsman.triage.SiteSituation;
import org.roundsman.triage.Sureness;

/**
 * Goes from each lost device up to the highest lost element that explains it. First is asked whether the whole site was lost,
 * then whether a cause is only just over, then branch by branch.
 */
public final class Search {

    /** Unanswered rounds that are hardly chance. */
    private static final int STRONG = 2;

    private final Scene scene;
    private final WholeSite site;
    private final Set<Long> withSite;
    private final Map<Long, EndedCause> starting = new HashMap<>();
    private final Map<Long, DeviceLook> tops = new HashMap<>();

    public Search(SiteSituation situation) {
        this.scene = new Scene(situation);
        this.site = new WholeSite(scene);
        this.withSite = site.devices();
    }

    /** See {@code CauseFinder}. */
    public List<Finding> findings() {
        if (scene.watched().stream().noneMatch(DeviceLook::silent)) {
            return List.of();
        }
        List<Finding> findings = new ArrayList<>(site.findings());
        List<DeviceLook> open = scene.watched().stream()
                .filter(look -> look.lost() && !withSite.contains(look.deviceId()))
                .sorted(Comparator.comparing(
                                (DeviceLook look) -> look.lostSince().orElseThrow())
                        .thenComparing(DeviceLook::deviceId))
                .toList();
        open.forEach(look -> scene.stillStarting(look).ifPresent(ended -> starting.put(look.deviceId(), ended)));
        findings.addAll(branches(open));
        return findings;
    }

    /** By the topmost lost element of each branch. */
    private List<Finding> branches(List<DeviceLook> open) {
        List<Finding> findings = new ArrayList<>();
        Map<DeviceLook, List<DeviceLook>> under = new LinkedHashMap<>();
        for (DeviceLook look : open) {
            DeviceLook top = top(look);
            if (starting.containsKey(top.deviceId())) {
                EndedCause ended = starting.get(top.deviceId());
                pointing(look, ended.key(), ended.cause(), back(ended)).ifPresent(findings::add);
            } else if (withSite.contains(top.deviceId())) {
                String with = "It hangs below " + Words.called(top) + ", which was lost with the site.";
                pointing(look, scene.uplink(), CauseKind.UPLINK_LOST, with).ifPresent(findings::add);
            } else {
                List<DeviceLook> below = under.computeIfAbsent(top, made -> new ArrayList<>());
                if (!look.equals(top)) {
                    below.add(look);
                }
            }
        }
        findings.addAll(0, new Verdicts(scene).of(strongOnly(under)));
        return findings;
    }

    /** A cause that has missed one round only may have done so by chance: too early to say. */
    private Map<DeviceLook, List<DeviceLook>> strongOnly(Map<DeviceLook, List<DeviceLook>> tops) {
        Map<DeviceLook, List<DeviceLook>> strong = new LinkedHashMap<>();
        tops.forEach((top, under) -> {
            boolean sure = top.silent() || under.isEmpty() || top.misses() >= STRONG;
            if (sure) {
                strong.put(top, under);
            } else {
                under.forEach(look -> strong.put(look, List.of()));
                strong.put(top, List.of());
            }
        });
        return strong;
    }

    /**
     * The highest element above it that explains it and is explained by nothing itself, or it. Something lost in between may
     * have gone with what is above it, which the times rule out for this one: then that is no cause of this one either.
     */
    private DeviceLook top(DeviceLook lost) {
        DeviceLook known = tops.get(lost.deviceId());
        if (known != null) {
            return known;
        }
        List<DeviceLook> explaining = explaining(lost);
        DeviceLook top = lost;
        for (int i = explaining.size() - 1; i >= 0 && top.equals(lost); i--) {
            DeviceLook above = explaining.get(i);
            if (withSite.contains(above.deviceId())
                    || starting.containsKey(above.deviceId())
                    || top(above).equals(above)) {
                top = above;
            }
        }
        tops.put(lost.deviceId(), top);
        return top;
    }

    /** What explains it, from the nearest up, without a gap. */
    private List<DeviceLook> explaining(DeviceLook lost) {
        List<DeviceLook> explaining = new ArrayList<>();
        DeviceLook at = lost;
        Optional<TreeNode> next = scene.above(lost.deviceId());
        while (next.isPresent() && !starting.containsKey(at.deviceId())) {
            Optional<DeviceLook> above = scene.look(next.get().deviceId()).filter(DeviceLook::watched);
            if (above.isPresent() && !scene.aboveIsJustBack(above.get(), lost)) {
                if (!explains(above.get(), lost)) {
                    return explaining;
                }
                at = above.get();
                explaining.add(at);
            }
            next = scene.above(next.get().deviceId());
        }
        return explaining;
    }

    private boolean explains(DeviceLook above, DeviceLook lost) {
        return scene.blocks(above)
                && scene.belongs(
                        lost, Scene.silence(above.deviceId()), above.lostSince().orElseThrow(), above.heard());
    }

    private String back(EndedCause ended) {
        return Words.capital(ended.name()) + " is back since "
                + scene.times().second(ended.endedAt())
                + ": this one may still be starting, or has not been asked again yet.";
    }

    /** It points to a cause that is over, or to that of what it hangs on. */
    private Optional<Finding> pointing(DeviceLook lost, AlarmKey key, CauseKind cause, String why) {
        AlarmKey own = Scene.silence(lost.deviceId());
        if (!lost.silent()) {
            return Optional.empty();
        }
        return Optional.of(new Finding(
                own,
                cause,
                Optional.of(key),
                lost.lostSince().orElseThrow(),
                List.of(new Words(scene).lastAnswered(lost), why),
                Set.of(),
                Sureness.LIKELY,
                false,
                Set.of()));
    }
}
