package org.roundsman.triage.find;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.alarms.CauseKind;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Finding;
import org.roundsman.triage.Sureness;

/**
 * Whether all of a site was lost at one time: everything that is watched, at least two devices. A device that was silent long
 * before is left to itself. When the gateway is lost and nothing was heard since, a device that was not asked yet does not
 * hold this back.
 */
final class WholeSite {

    private static final int ENOUGH = 2;

    private final Scene scene;
    private final Words words;
    private final List<DeviceLook> lost;
    private final List<DeviceLook> group;

    WholeSite(Scene scene) {
        this.scene = scene;
        this.words = new Words(scene);
        this.lost = scene.watched().stream()
                .filter(DeviceLook::lost)
                .filter(look -> !startingAfterAnother(look))
                .toList();
        this.group = lost.isEmpty() ? List.of() : group();
    }

    /** It was lost to something else that is over since a moment ago. */
    private boolean startingAfterAnother(DeviceLook look) {
        return scene.stillStarting(look)
                .filter(ended -> !ended.key().equals(scene.uplink()))
                .isPresent();
    }

    private List<DeviceLook> group() {
        Optional<Instant> heard = Scene.lastHeard(lost);
        List<DeviceLook> sure =
                lost.stream().filter(look -> Scene.mayBeOf(look, heard)).toList();
        Instant began = Scene.firstMiss(sure);
        List<DeviceLook> all = lost.stream()
                .filter(look -> scene.belongs(look, scene.uplink(), began, heard))
                .toList();
        return all.size() >= ENOUGH && strong(all) && nobodyHeard(all) ? all : List.of();
    }

    /** Some are silent, and it is more than chance that the others missed a round. */
    private static boolean strong(List<DeviceLook> all) {
        int least = all.size() > ENOUGH ? 1 : ENOUGH;
        return all.stream().anyMatch(DeviceLook::silent)
                && all.stream().filter(look -> look.misses() >= ENOUGH).count() >= ENOUGH
                && Words.only(all, DeviceKind.GATEWAY).stream().allMatch(look -> look.misses() >= least);
    }

    private boolean nobodyHeard(List<DeviceLook> all) {
        Instant since = Scene.firstMiss(all);
        List<DeviceLook> others =
                scene.watched().stream().filter(look -> !look.lost()).toList();
        boolean gateway = Words.only(all, DeviceKind.GATEWAY).stream().anyMatch(scene::blocks);
        return others.isEmpty() || gateway && others.stream().noneMatch(look -> look.askedSince(since));
    }

    /** Devices that were lost with the site; empty when it was not lost. */
    Set<Long> devices() {
        return group.stream().map(DeviceLook::deviceId).collect(Collectors.toSet());
    }

    /** The finding of the site's alarm, then those of its devices; none when it was not lost. */
    List<Finding> findings() {
        if (group.isEmpty()) {
            return List.of();
        }
        Instant began = Scene.firstMiss(group);
        boolean settled = scene.askedAllSince(began);
        List<Finding> findings = new ArrayList<>();
        findings.add(new Finding(
                scene.uplink(),
                CauseKind.UPLINK_LOST,
                Optional.empty(),
                began,
                evidence(),
                devices(),
                Words.only(group, DeviceKind.GATEWAY).isEmpty() ? Sureness.LIKELY : Sureness.SURE,
                settled,
                Set.of()));
        for (DeviceLook each : group) {
            if (each.silent()) {
                findings.add(pointing(each, settled));
            }
        }
        return findings;
    }

    private Finding pointing(DeviceLook each, boolean settled) {
        return new Finding(
                Scene.silence(each.deviceId()),
                CauseKind.UPLINK_LOST,
                Optional.of(scene.uplink()),
                each.lostSince().orElseThrow(),
                List.of(words.lastAnswered(each), "Nothing at the site answers: its line or gateway explains it."),
                Set.of(),
                Sureness.SURE,
                settled,
                Set.of());
    }

    private List<String> evidence() {
        List<String> evidence = new ArrayList<>();
        List<DeviceLook> gateways = Words.only(group, DeviceKind.GATEWAY);
        gateways.forEach(gateway -> evidence.add(words.lastAnswered(gateway)));
        if (gateways.isEmpty()) {
            evidence.add("No gateway of the site tells more: the line is concluded from all devices falling silent.");
        }
        evidence.addAll(words.counts(group, scene.watched(), ""));
        notAsked().ifPresent(evidence::add);
        Set<DeviceLook> earlier = new HashSet<>(lost);
        group.forEach(earlier::remove);
        words.before(earlier).ifPresent(evidence::add);
        words.unwatched().ifPresent(evidence::add);
        evidence.add("From outside, a lost line, a dead gateway and a power cut at the site look the same.");
        return evidence;
    }

    private Optional<String> notAsked() {
        String names = scene.watched().stream()
                .filter(look -> !look.lost())
                .map(DeviceLook::name)
                .limit(5)
                .collect(Collectors.joining(", "));
        return names.isEmpty() ? Optional.empty() : Optional.of("Not asked since: " + names + ".");
    }
}
