package org.roundsman.web.topology;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.How;
import org.roundsman.topology.Port;
import org.roundsman.topology.PortState;
import org.roundsman.topology.Power;
import org.roundsman.topology.PowerState;
import org.roundsman.topology.TreeNode;
import org.roundsman.web.page.State;
import org.roundsman.web.page.Words;

/**
 * A device in the picture and the list of a site.
 *
 * @param parent name of the device above, or empty
 * @param children what hangs on it
 */
record Spot(TreeNode node, State state, String parent, Instant now, List<Spot> children) {

    static Spot of(TreeNode node, Map<Long, State> states, String parent, Instant now) {
        State state = states.getOrDefault(node.deviceId(), State.of(Condition.UNWATCHED, Optional.empty(), now));
        List<Spot> children = node.children().stream()
                .map(child -> of(child, states, node.name(), now))
                .toList();
        return new Spot(node, state, parent, now, children);
    }

    public long id() {
        return node.deviceId();
    }

    public String name() {
        return node.name();
    }

    public String kind() {
        return node.kind().word();
    }

    boolean carries() {
        return node.kind() != DeviceKind.ACCESS_POINT || !children.isEmpty();
    }

    boolean gateway() {
        return node.kind() == DeviceKind.GATEWAY;
    }

    Attachment place() {
        return node.place();
    }

    public boolean known() {
        return place().known();
    }

    /** The port's name alone, for a tag: {@code 7}; a question mark where it is not known. */
    String tag() {
        if (place().port().isEmpty()) {
            return known() ? "?" : "";
        }
        String name = place().portName();
        return name.isEmpty() ? String.valueOf(Math.abs(place().port().getAsInt())) : name;
    }

    Optional<Power> power() {
        return node.port().flatMap(Port::power);
    }

    /** Name of the sign for power: delivering, idle, off, fault, or empty where the port delivers none. */
    String powerSign() {
        return power().map(power -> power.faulty()
                        ? "fault"
                        : power.state() == PowerState.DELIVERING
                                ? "delivering"
                                : power.state() == PowerState.DISABLED ? "off" : "idle")
                .orElse("");
    }

    String powerClass() {
        return power().filter(power -> power.powerClass().isPresent())
                .map(power -> String.valueOf(power.powerClass().getAsInt()))
                .orElse("");
    }

    /** What deserves a word beside the name, in few words. */
    String trouble() {
        return Stream.of(
                        state.word().equals("answering") ? "" : state.text(),
                        node.port()
                                        .filter(port -> port.state() == PortState.DOWN)
                                        .isPresent()
                                ? "port down"
                                : "",
                        powerSign().equals("fault") ? "power fault" : "",
                        place().old() ? "old" : "")
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** {@code port 7 of sw-2}. */
    public String where() {
        return known() ? place().portTitle() + " of " + parent : "";
    }

    /** {@code LLDP, seen 3 min ago}. */
    public String known(Instant at) {
        String word = place().how().word();
        String seen = place().seenAt()
                .map(time -> (place().how() == How.PERSON ? ", " : ", seen ") + Words.ago(time, at))
                .orElse("");
        return word + seen + (place().old() ? ", missing since: the last place known" : "");
    }

    /** {@code up, 1 Gb/s; power delivered, class 4}. */
    public String line() {
        return node.port()
                .map(port -> PortLine.stateWords(port)
                        + port.power().map(power -> "; " + power.words()).orElse(""))
                .orElse("");
    }

    public List<String> notes() {
        return place().notes();
    }

    /** Everything as one line of text. */
    String words() {
        String words = name() + ", " + kind() + ", " + state.text();
        if (known()) {
            words += ", on " + place().portTitle() + " (" + known(now) + ")";
        }
        return words + (line().isEmpty() ? "" : ", " + line());
    }
}
