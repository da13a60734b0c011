package org.roundsman.triage.find;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.CauseKind;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Outcome;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Finding;
import org.roundsman.triage.Standing;
import org.roundsman.triage.Sureness;

/** Says of each topmost lost element what is behind it, and of each device below it to what it points. */
final class Verdicts {

    /** Unanswered rounds that are hardly chance. */
    private static final int STRONG = 2;

    private final Scene scene;
    private final Words words;
    private final PortFacts ports;

    Verdicts(Scene scene) {
        this.scene = scene;
        this.words = new Words(scene);
        this.ports = new PortFacts(scene);
    }

    /** Findings of the alarms of all of them, causes first. */
    List<Finding> of(Map<DeviceLook, List<DeviceLook>> tops) {
        List<Suspicion> judged = new ArrayList<>();
        tops.forEach((top, explains) -> judged.add(judge(top, explains)));
        List<Finding> findings = new ArrayList<>();
        for (Together group : Together.of(scene, judged)) {
            findings.addAll(group.findings());
        }
        List<Finding> pointing = judged.stream()
                .flatMap(suspicion -> suspicion.pointing(scene).stream())
                .toList();
        findings.addAll(pointing);
        return findings;
    }

    private Suspicion judge(DeviceLook top, List<DeviceLook> explains) {
        List<String> evidence = new ArrayList<>();
        evidence.add(words.lastAnswered(top));
        evidence.addAll(words.counts(explains, scene.below(top.deviceId()), " below it"));
        boolean settled = scene.askedAllSince(top.lostSince().orElseThrow());
        if (passesOn(top)) {
            return passingOn(top, evidence, settled);
        }
        if (top.outcome().filter(Outcome.PORT_CLOSED::equals).isPresent()) {
            return portClosed(top, explains, evidence, settled);
        }
        if (alone(top)) {
            return alone(top, explains, evidence, settled);
        }
        return top.kind() == DeviceKind.GATEWAY
                ? gateway(top, explains, evidence, settled)
                : hanging(top, explains, evidence, settled);
    }

    /** It is lost, but what hangs on it answers. */
    private boolean passesOn(DeviceLook top) {
        return !scene.blocks(top);
    }

    private Suspicion passingOn(DeviceLook top, List<String> evidence, boolean settled) {
        List<DeviceLook> below = scene.below(top.deviceId());
        long heard = below.stream()
                .filter(look -> look.heardAfter(top.lostSince().orElseThrow()))
                .count();
        evidence.add(heard + " of " + below.size() + (below.size() == 1 ? " device" : " devices")
                + " behind it answered since: it passes traffic on.");
        long with = below.stream().filter(look -> lostWith(top, look)).count();
        evidence.add(
                with == 0
                        ? "So it is its own management that fails: it hangs, or its SNMP, address or access list was"
                                + " changed."
                        : (with == 1 ? "Another one was" : with + " others were")
                                + " lost at the same time as it, so more than its management may fail.");
        boolean management = with == 0 && top.kind() != DeviceKind.ACCESS_POINT;
        return new Suspicion(
                top,
                List.of(),
                management ? CauseKind.MANAGEMENT_LOST : CauseKind.DEVICE_LOST,
                evidence,
                with == 0 ? Sureness.SURE : Sureness.LIKELY,
                settled,
                false,
                Set.of());
    }

    /** It was lost when the one above it was, and was not heard since; by chance or at an old place it tells nothing. */
    private boolean lostWith(DeviceLook top, DeviceLook below) {
        boolean strong = below.silent() || below.lost() && below.misses() >= STRONG;
        return strong
                && !scene.oldPlace(below.deviceId())
                && Scene.mayBeOf(below, top.heard())
                && !below.heardAfter(top.lostSince().orElseThrow().plus(Scene.SLACK));
    }

    /** Its host says so itself (ICMP port unreachable, RFC 792), so it has power and the way to it is good. */
    private Suspicion portClosed(DeviceLook top, List<DeviceLook> explains, List<String> evidence, boolean settled) {
        evidence.add("Its host is there, but nothing listens on its SNMP port: SNMP was switched off or is starting.");
        return new Suspicion(top, explains, CauseKind.DEVICE_LOST, evidence, Sureness.SURE, settled, false, Set.of());
    }

    /** Nothing else at the site answers, so nothing tells the line from the device. */
    private boolean alone(DeviceLook top) {
        return scene.watched().stream()
                .noneMatch(look -> !look.equals(top) && look.standing().heard());
    }

    private Suspicion alone(DeviceLook top, List<DeviceLook> explains, List<String> evidence, boolean settled) {
        boolean gateway = top.kind() == DeviceKind.GATEWAY;
        if (scene.situation().devices().size() == 1) {
            evidence.add("It is the only device of the site.");
        } else {
            evidence.add("No other device of the site answers that would tell the line from the device.");
            List<DeviceLook> earlier = scene.watched().stream()
                    .filter(look -> look.lost() && !look.equals(top) && !explains.contains(look))
                    .toList();
            words.before(earlier.stream().filter(DeviceLook::silent).toList()).ifPresent(evidence::add);
            words.unwatched().ifPresent(evidence::add);
        }
        evidence.add(
                gateway
                        ? "From outside, a lost line, a dead gateway and a power cut at the site look the same."
                        : "It may be the site's line, its power, or the "
                                + top.kind().word() + " itself.");
        return new Suspicion(
                top,
                explains,
                gateway ? CauseKind.UPLINK_LOST : CauseKind.NOT_SURE,
                evidence,
                gateway ? Sureness.LIKELY : Sureness.OPEN,
                settled && nobodyElseMisses(top, explains),
                false,
                Set.of());
    }

    /** Somebody else who missed a round may turn this into the loss of the site. */
    private boolean nobodyElseMisses(DeviceLook top, List<DeviceLook> explains) {
        return scene.watched().stream()
                .allMatch(look -> look.standing() != Standing.MISSING || look.equals(top) || explains.contains(look));
    }

    private Suspicion gateway(DeviceLook top, List<DeviceLook> explains, List<String> evidence, boolean settled) {
        long others =
                scene.watched().stream().filter(look -> look.standing().heard()).count();
        evidence.add((others == 1 ? "One other device" : others + " other devices")
                + " of the site answered, not known to be behind it.");
        boolean lost = !explains.isEmpty();
        evidence.add(
                lost
                        ? "So its part of the site is cut off: the line behind it, or the gateway itself."
                        : "So the line works: it is the gateway itself, or its SNMP.");
        CauseKind cause = lost ? CauseKind.UPLINK_LOST : CauseKind.DEVICE_LOST;
        return new Suspicion(top, explains, cause, evidence, Sureness.LIKELY, settled, false, Set.of());
    }

    private Suspicion hanging(DeviceLook top, List<DeviceLook> explains, List<String> evidence, boolean settled) {
        aboveAnswers(top).ifPresent(evidence::add);
        PortFacts.Saying port = ports.of(top);
        evidence.addAll(port.sentences());
        CauseKind cause = port.cause().orElse(CauseKind.DEVICE_LOST);
        if (top.kind() == DeviceKind.NETWORK_SWITCH) {
            cause = ofSwitch(cause, !explains.isEmpty());
        }
        Set<Long> wanted = new HashSet<>();
        port.wanted().ifPresent(wanted::add);
        return new Suspicion(
                top,
                explains,
                port.sureness() == Sureness.OPEN ? CauseKind.NOT_SURE : cause,
                evidence,
                port.sureness(),
                settled && !aboveMisses(top) && (wanted.isEmpty() || scene.waitedForPorts(top)),
                true,
                wanted);
    }

    private static CauseKind ofSwitch(CauseKind port, boolean below) {
        return switch (port) {
            case LINK_DOWN -> below ? CauseKind.SWITCH_POWER : CauseKind.LINK_DOWN;
            case DEVICE_LOST -> CauseKind.SWITCH_LOST;
            default -> port;
        };
    }

    private boolean aboveMisses(DeviceLook top) {
        return scene.above(top.deviceId())
                .map(TreeNode::deviceId)
                .flatMap(scene::look)
                .filter(look -> look.standing() == Standing.MISSING)
                .isPresent();
    }

    private Optional<String> aboveAnswers(DeviceLook top) {
        return scene.above(top.deviceId())
                .map(TreeNode::deviceId)
                .flatMap(scene::look)
                .filter(look -> look.standing().heard())
                .map(look -> words.answered(look, ", on which it hangs,"));
    }
}
