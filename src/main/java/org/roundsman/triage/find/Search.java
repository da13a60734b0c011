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
    private final Map<Long, EndedCause> starting = new HashMap<>();

    public Search(SiteSituation situation) {
        this.scene = new Scene(situation);
        this.site = new WholeSite(scene);
    }

    /** See {@code CauseFinder}. */
    public List<Finding> findings() {
        if (scene.watched().stream().noneMatch(DeviceLook::silent)) {
            return List.of();
        }
        List<Finding> findings = new ArrayList<>(site.findings());
        Set<Long> withSite = site.devices();
        List<DeviceLook> open = scene.watched().stream()
                .filter(look -> look.lost() && !withSite.contains(look.deviceId()))
                .sorted(Comparator.comparing(
                                (DeviceLook look) -> look.lostSince().orElseThrow())
                        .thenComparing(DeviceLook::deviceId))
                .toList();
        open.forEach(look -> scene.stillStarting(look).ifPresent(ended -> starting.put(look.deviceId(), ended)));
        findings.addAll(branches(open, withSite));
        return findings;
    }

    /** By the topmost lost element of each branch. */
    private List<Finding> branches(List<DeviceLook> open, Set<Long> withSite) {
        List<Finding> findings = new ArrayList<>();
        Map<DeviceLook, List<DeviceLook>> tops = new LinkedHashMap<>();
        for (DeviceLook look : open) {
            DeviceLook top = top(look);
            if (starting.containsKey(top.deviceId())) {
                EndedCause ended = starting.get(top.deviceId());
                pointing(look, ended.key(), ended.cause(), back(ended)).ifPresent(findings::add);
            } else if (withSite.contains(top.deviceId())) {
                String with = "It hangs below " + Words.called(top) + ", which was lost with the site.";
                pointing(look, scene.uplink(), CauseKind.UPLINK_LOST, with).ifPresent(findings::add);
            } else {
                List<DeviceLook> under = tops.computeIfAbsent(top, made -> new ArrayList<>());
                if (!look.equals(top)) {
                    under.add(look);
                }
            }
        }
        findings.addAll(0, new Verdicts(scene).of(strongOnly(tops)));
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

    private DeviceLook top(DeviceLook lost) {
        DeviceLook top = lost;
        Optional<TreeNode> next = scene.above(lost.deviceId());
        while (next.isPresent() && !starting.containsKey(top.deviceId())) {
            Optional<DeviceLook> above = scene.look(next.get().deviceId()).filter(DeviceLook::watched);
            if (above.isPresent()) {
                if (!explains(above.get(), lost)) {
                    return top;
                }
                top = above.get();
            }
            next = scene.above(next.get().deviceId());
        }
        return top;
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
