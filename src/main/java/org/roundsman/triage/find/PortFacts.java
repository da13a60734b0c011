package org.roundsman.triage.find;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.CauseKind;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.Port;
import org.roundsman.topology.Power;
import org.roundsman.topology.PowerMatch;
import org.roundsman.topology.PowerState;
import org.roundsman.topology.TreeNode;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.Sureness;

/** What the port on which a lost device hangs tells about it. Only what was read after the silence began counts. */
final class PortFacts {

    /**
     * What a port tells.
     *
     * @param cause empty when the port tells nothing
     * @param link it has link, so the device has power
     * @param wanted the device above that should be read, since its ports were last read before the silence
     */
    record Saying(
            Optional<CauseKind> cause, List<String> sentences, Sureness sureness, boolean link, Optional<Long> wanted) {

        static Saying nothing(Sureness sureness, String sentence) {
            return new Saying(Optional.empty(), List.of(sentence), sureness, false, Optional.empty());
        }
    }

    private final Scene scene;

    PortFacts(Scene scene) {
        this.scene = scene;
    }

    /** Of a lost device. */
    Saying of(DeviceLook lost) {
        Optional<TreeNode> above = scene.above(lost.deviceId());
        if (above.isEmpty()) {
            return Saying.nothing(
                    Sureness.LIKELY,
                    "On which port it hangs is not known, so whether it has power and link cannot be told.");
        }
        TreeNode node = scene.node(lost.deviceId()).orElseThrow();
        Optional<Instant> read = Optional.ofNullable(
                scene.situation().portsReadAt().get(above.get().deviceId()));
        boolean fresh =
                read.filter(at -> !at.isBefore(lost.lostSince().orElseThrow())).isPresent();
        if (fresh && node.port().isPresent()) {
            String title = node.port().get().title() + " of " + above.get().name();
            return weigh(lost, node, title, scene.times().second(read.get()));
        }
        return scene.look(above.get().deviceId())
                .filter(DeviceLook::watched)
                .map(holder -> unread(node, holder, read))
                .orElseGet(() -> Saying.nothing(
                        Sureness.OPEN,
                        above.get().name()
                                + ", on which it hangs, is paused or not watched, so it may as well be that one."));
    }

    /** Why the port tells nothing. */
    private Saying unread(TreeNode node, DeviceLook holder, Optional<Instant> read) {
        String name = holder.name();
        return switch (holder.standing()) {
            case MISSING ->
                Saying.nothing(
                        Sureness.OPEN,
                        name + ", on which it hangs, missed its last round too: the next ones will tell more.");
            case SILENT ->
                Saying.nothing(Sureness.LIKELY, name + ", on which it hangs, cannot be asked about its port.");
            case REFUSES ->
                Saying.nothing(
                        Sureness.LIKELY,
                        name + ", on which it hangs, rejects our credentials: its ports cannot be read.");
            default ->
                node.port()
                        .map(port -> stale(port, holder, read))
                        .orElseGet(() -> Saying.nothing(
                                Sureness.LIKELY,
                                "On which port of " + name
                                        + " it hangs is not known, so whether it has power and link cannot be told."));
        };
    }

    private Saying stale(Port port, DeviceLook holder, Optional<Instant> read) {
        String title = Words.capital(port.title()) + " of " + holder.name();
        String when = read.map(at -> " was last read at " + scene.times().second(at) + ", before the silence began.")
                .orElse(" was not read yet.");
        return new Saying(
                Optional.empty(), List.of(title + when), Sureness.LIKELY, false, Optional.of(holder.deviceId()));
    }

    private Saying weigh(DeviceLook lost, TreeNode node, String title, String read) {
        Port port = node.port().orElseThrow();
        Link link = Link.of(port);
        // A switch with mains draws no power from the port on which it hangs: nothing follows from that.
        Optional<Power> power = port.power()
                .filter(p ->
                        lost.kind() == DeviceKind.ACCESS_POINT || p.faulty() || p.state() == PowerState.DELIVERING);
        List<String> sentences = new ArrayList<>();
        CauseKind cause = power.map(p -> powered(p, link, title, read, sentences))
                .orElseGet(() -> linked(link, title, read, sentences));
        boolean shaky = link == Link.UNKNOWN && cause == CauseKind.DEVICE_LOST;
        if (power.isPresent() && power.get().match() == PowerMatch.ORDER) {
            sentences.add("Which power port is that port is known by order only.");
            shaky = true;
        }
        if (node.place().old()) {
            sentences.add("That it hangs there rests on old evidence"
                    + node.place()
                            .seenAt()
                            .map(at -> ", last seen at " + scene.times().minute(at))
                            .orElse("") + ".");
            shaky = true;
        }
        return new Saying(
                Optional.of(cause),
                sentences,
                shaky ? Sureness.LIKELY : Sureness.SURE,
                link == Link.UP,
                Optional.empty());
    }

    private enum Link {
        UP("has link"),
        DOWN("has no link"),
        UNKNOWN("does not say whether it has link");

        private final String word;

        Link(String word) {
            this.word = word;
        }

        static Link of(Port port) {
            if (!port.present()) {
                return DOWN;
            }
            return switch (port.state()) {
                case UP -> UP;
                case DOWN, LOWER_LAYER_DOWN, NOT_PRESENT -> DOWN;
                default -> UNKNOWN;
            };
        }
    }

    private static CauseKind powered(Power power, Link link, String title, String read, List<String> sentences) {
        String port = Words.capital(title);
        if (power.state() == PowerState.DELIVERING) {
            String delivers = port + " delivers power"
                    + (power.powerClass().isPresent()
                            ? ", class " + power.powerClass().getAsInt()
                            : "");
            sentences.add(delivers + ", and " + link.word + ", read at " + read + ".");
            return link == Link.DOWN ? noLinkThoughPowered(sentences) : afterLink(link, sentences);
        }
        if (power.state() == PowerState.UNKNOWN || power.state() == PowerState.TEST) {
            return linked(link, title, read, sentences);
        }
        boolean offers = power.enabled() && power.state() == PowerState.SEARCHING;
        String says = power.state().faulty()
                ? port + " reports a power fault"
                : offers ? port + " offers power, but nothing draws it" : "Power on " + title + " is switched off";
        sentences.add(says + ", and the port " + link.word + ", read at " + read + ".");
        if (link == Link.UP) {
            sentences.add("With link it has power from elsewhere: it hangs, or its SNMP was switched off.");
            return CauseKind.DEVICE_LOST;
        }
        if (offers) {
            sentences.add("So the cable is out or broken, or the device itself is dead.");
            return CauseKind.NO_POWER_DRAWN;
        }
        sentences.add(
                power.state().faulty()
                        ? "The port delivers no power until that is mended: cable, device, or the switch's port."
                        : "Switched on again, the device should start, if it has no power from elsewhere.");
        return CauseKind.PORT_NOT_DELIVERING;
    }

    private static CauseKind noLinkThoughPowered(List<String> sentences) {
        sentences.add("It draws power but has no link: it is starting, or its network port or the cable is broken.");
        return CauseKind.LINK_DOWN;
    }

    private static CauseKind afterLink(Link link, List<String> sentences) {
        if (link == Link.UP) {
            sentences.add("Power and cable are good: it hangs, or its SNMP or address was changed.");
        }
        return CauseKind.DEVICE_LOST;
    }

    private static CauseKind linked(Link link, String title, String read, List<String> sentences) {
        sentences.add(Words.capital(title) + " " + link.word + ", read at " + read + ".");
        if (link == Link.DOWN) {
            sentences.add("So it has no power, or its cable is out.");
            return CauseKind.LINK_DOWN;
        }
        return afterLink(link, sentences);
    }
}
