package org.roundsman.topology.find;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.ChassisId;
import org.roundsman.topology.Port;

/**
 * One device of a site, as far as finding its place needs it.
 *
 * @param systemName what it calls itself, or empty
 * @param chassis what it calls itself in LLDP
 * @param macs addresses of its own
 * @param ports its ports, where they were read
 */
public record Member(
        long id,
        DeviceKind kind,
        String name,
        String host,
        String systemName,
        Optional<ChassisId> chassis,
        Set<String> macs,
        List<Port> ports) {

    public Member {
        macs = Set.copyOf(macs);
        ports = List.copyOf(ports);
    }

    /** Gateways and switches: what others hang on. */
    boolean carries() {
        return kind != DeviceKind.ACCESS_POINT;
    }

    Optional<Port> port(int number) {
        return ports.stream().filter(port -> port.number() == number).findFirst();
    }

    /** What it calls that port, in words. */
    String portTitle(int number) {
        return port(number).map(Port::title).orElseGet(() -> Port.title(number, ""));
    }

    String portName(int number) {
        return port(number)
                .map(port -> port.name().isEmpty() ? port.description() : port.name())
                .orElse("");
    }
}
