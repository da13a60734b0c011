package org.roundsman.triage.find;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.EndedCause;
import org.roundsman.triage.SiteSituation;

/** A site's situation, indexed, with the questions that all rules ask of it. */
final class Scene {

    /** A round takes a few seconds: two that were on their way at one time may end differently. */
    static final Duration SLACK = Duration.ofSeconds(5);

    /** Beyond two intervals after the first miss, more rounds or readings are not waited for. */
    private static final Duration READING_TAKES = Duration.ofSeconds(15);

    private final SiteSituation situation;
    private final Map<Long, TreeNode> nodes = new HashMap<>();
    private final Map<Long, TreeNode> above = new HashMap<>();
    private final Map<Long, Boolean> blocking = new HashMap<>();
    private final List<DeviceLook> watched;
    private final Times times;

    Scene(SiteSituation situation) {
        this.situation = situation;
        this.times = new Times(situation.zone(), situation.now());
        situation.tree().roots().forEach(this::index);
        this.watched = situation.devices().values().stream()
                .filter(DeviceLook::watched)
                .sorted(java.util.Comparator.comparing(DeviceLook::kind)
                        .reversed()
                        .thenComparing(DeviceLook::deviceId))
                .toList();
    }

    private void index(TreeNode node) {
        nodes.put(node.deviceId(), node);
        for (TreeNode child : node.children()) {
            above.put(child.deviceId(), node);
            index(child);
        }
    }

    SiteSituation situation() {
        return situation;
    }

    Times times() {
        return times;
    }

    Instant now() {
        return situation.now();
    }

    /** Devices that are evidence of something: gateways, then switches, then access points. */
    List<DeviceLook> watched() {
        return watched;
    }

    Optional<DeviceLook> look(long deviceId) {
        return Optional.ofNullable(situation.devices().get(deviceId));
    }

    Optional<TreeNode> node(long deviceId) {
        return Optional.ofNullable(nodes.get(deviceId));
    }

    /** What the device hangs on. */
    Optional<TreeNode> above(long deviceId) {
        return Optional.ofNullable(above.get(deviceId));
    }

    /** Watched devices that hang on it, directly or further down. */
    List<DeviceLook> below(long deviceId) {
        List<DeviceLook> found = new ArrayList<>();
        node(deviceId).ifPresent(node -> node.all().skip(1).forEach(each -> look(each.deviceId())
                .filter(DeviceLook::watched)
                .ifPresent(found::add)));
        return found;
    }

    /** Watched devices that hang on it directly; of 0: of which nobody knows on what they hang. */
    List<DeviceLook> on(long deviceId) {
        return watched.stream()
                .filter(look -> above(look.deviceId()).map(TreeNode::deviceId).orElse(0L) == deviceId)
                .toList();
    }

    /**
     * Whether it is lost and nothing below it was heard since. Places that rest on old evidence speak against it only when
     * no others do.
     */
    boolean blocks(DeviceLook suspect) {
        return suspect.lost() && blocking.computeIfAbsent(suspect.deviceId(), id -> nothingHeardBelow(suspect));
    }

    private boolean nothingHeardBelow(DeviceLook suspect) {
        Instant since = suspect.lostSince().orElseThrow().plus(SLACK);
        List<DeviceLook> below = below(suspect.deviceId());
        List<DeviceLook> firm =
                below.stream().filter(look -> !oldPlace(look.deviceId())).toList();
        return (firm.isEmpty() ? below : firm)
                .stream().noneMatch(look -> look.heardAfter(since) && !justBack(suspect, look));
    }

    /** It went down with the suspect and answers again, but the suspect was not asked since: both may be back. */
    private boolean justBack(DeviceLook suspect, DeviceLook below) {
        return fellTogether(suspect, below)
                && below.heard().filter(at -> !suspect.askedSince(at)).isPresent();
    }

    /** One with the other, or both with a third that is not back yet. */
    private boolean fellTogether(DeviceLook one, DeviceLook other) {
        return situation.fallen().entrySet().stream()
                .anyMatch(fallen -> fallen.getValue().contains(other.deviceId())
                        && (fallen.getKey() == one.deviceId()
                                || fallen.getValue().contains(one.deviceId())));
    }

    /**
     * Whether what the lost one hangs on fell with it and answers again, while the lost one was not asked since: that tells
     * nothing yet of what is further up.
     */
    boolean aboveIsJustBack(DeviceLook above, DeviceLook lost) {
        return !above.lost()
                && fellTogether(above, lost)
                && above.heard().filter(at -> !lost.askedSince(at)).isPresent();
    }

    boolean oldPlace(long deviceId) {
        return node(deviceId).filter(node -> node.place().old()).isPresent();
    }

    /**
     * Whether a lost device can have been lost to something that was last heard at that time. Up to then it may have missed
     * rounds by chance, but not so many that it was silent already.
     */
    static boolean mayBeOf(DeviceLook lost, Optional<Instant> heard) {
        Instant silentBy = lost.lostSince().orElseThrow().plus(lost.interval().multipliedBy(2));
        return heard.isEmpty() || silentBy.plus(SLACK).isAfter(heard.get());
    }

    /** The same, or it had not come back yet from the time before, when that very cause was over for a moment. */
    boolean belongs(DeviceLook lost, AlarmKey cause, Instant causeBegan, Optional<Instant> heard) {
        return mayBeOf(lost, heard)
                || situation.ended().stream()
                        .anyMatch(ended -> ended.key().equals(cause)
                                && ended.affected().contains(lost.deviceId())
                                && ended.recent(causeBegan));
    }

    /** What it was lost to, if that is over since a short while ago and it had no fair chance to come back yet. */
    Optional<EndedCause> stillStarting(DeviceLook lost) {
        return situation.ended().stream()
                .filter(ended -> ended.affected().contains(lost.deviceId()))
                .filter(ended -> !ended.key().equals(silence(lost.deviceId())))
                .filter(ended -> !lost.lostSince().orElseThrow().isAfter(ended.endedAt()))
                .filter(ended -> ended.recent(now()))
                .findFirst();
    }

    /** Whether every device that is not lost was asked since, or would have been by now. */
    boolean askedAllSince(Instant time) {
        Duration longest = watched.stream()
                .filter(look -> !look.lost())
                .map(DeviceLook::interval)
                .max(Duration::compareTo)
                .orElse(Duration.ZERO);
        return !now().isBefore(time.plus(longest.multipliedBy(2)))
                || watched.stream().allMatch(look -> look.lost() || look.askedSince(time));
    }

    /** Whether a reading of ports that was wished for would be here by now. */
    boolean waitedForPorts(DeviceLook lost) {
        Instant bound = lost.lostSince()
                .orElseThrow()
                .plus(lost.interval().multipliedBy(2))
                .plus(READING_TAKES);
        return !now().isBefore(bound);
    }

    static Instant firstMiss(Collection<DeviceLook> lost) {
        return lost.stream()
                .map(look -> look.lostSince().orElseThrow())
                .min(Instant::compareTo)
                .orElseThrow();
    }

    static Optional<Instant> lastHeard(Collection<DeviceLook> looks) {
        return looks.stream().flatMap(look -> look.heard().stream()).max(Instant::compareTo);
    }

    static AlarmKey silence(long deviceId) {
        return AlarmKey.of(AlarmType.DEVICE_SILENT, Resource.device(deviceId));
    }

    AlarmKey uplink() {
        return AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(situation.siteId()));
    }
}
