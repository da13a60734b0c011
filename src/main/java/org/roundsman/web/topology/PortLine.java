package org.roundsman.web.topology;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.roundsman.topology.NeighbourSeen;
import org.roundsman.topology.Port;
import org.roundsman.web.page.Words;

/**
 * A port in the table of its device.
 *
 * @param hanging devices found to hang on it
 * @param heard what is heard on it by LLDP, in words, for whatever is no device of ours
 */
record PortLine(
        String title,
        String alias,
        String state,
        String power,
        String powerMatch,
        List<Spot> hanging,
        List<String> heard,
        int addresses) {

    static PortLine of(Port port, List<Spot> hanging, List<NeighbourSeen> heard, Instant now) {
        return new PortLine(
                port.title() + (port.present() ? "" : " (not there any more)"),
                port.alias(),
                stateWords(port),
                port.power()
                        .map(power -> power.words() + (power.enabled() ? "" : " (not enabled)"))
                        .orElse(""),
                port.power().map(power -> power.match().word()).orElse(""),
                hanging,
                hanging.isEmpty()
                        ? heard.stream().map(each -> stranger(each, now)).toList()
                        : List.of(),
                port.macs());
    }

    static String stateWords(Port port) {
        String speed = port.speedMbit().isPresent() && port.state() == org.roundsman.topology.PortState.UP
                ? ", " + Words.rate(OptionalDouble.of(port.speedMbit().getAsLong() * 1e6))
                : "";
        return port.state().word() + speed;
    }

    private static String stranger(NeighbourSeen seen, Instant now) {
        String name = seen.announced().systemName().isEmpty()
                ? seen.announced().chassis().words()
                : "“" + seen.announced().systemName() + "” ("
                        + seen.announced().chassis().words() + ")";
        return "hears " + name + ", " + Words.ago(seen.lastSeen(), now);
    }
}
