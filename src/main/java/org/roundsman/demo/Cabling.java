package org.roundsman.demo;

import java.util.List;
import java.util.Optional;
import org.roundsman.demo.invent.CableLaying;

/**
 * What hangs on what in an invented fleet: the gateway feeds the first switch, each switch the next, and access points
 * hang on switch ports. The same fleet always has the same cables. Immutable.
 */
public final class Cabling {

    private final DemoFleet fleet;
    private final List<Wires> wires;

    /**
     * The cables of one device.
     *
     * @param up towards the gateway; null for the gateway itself
     * @param down away from it, by port
     * @param stations what else hangs on it
     */
    public record Wires(DemoLink up, List<DemoLink> down, List<DemoStation> stations) {}

    private Cabling(DemoFleet fleet) {
        this.fleet = fleet;
        this.wires = CableLaying.lay(fleet);
    }

    public static Cabling of(DemoFleet fleet) {
        return new Cabling(fleet);
    }

    /** The cable towards the gateway; a gateway has none. */
    public Optional<DemoLink> up(DemoDevice device) {
        return Optional.ofNullable(wires.get(device.number()).up());
    }

    /** The cables away from the gateway, by port. */
    public List<DemoLink> down(DemoDevice device) {
        return wires.get(device.number()).down();
    }

    /** What hangs on a switch besides devices, by port. */
    public List<DemoStation> stations(DemoDevice device) {
        return wires.get(device.number()).stations();
    }

    /** The device at the other end of a cable. */
    public DemoDevice across(DemoLink link, DemoDevice end) {
        return fleet.devices().get(link.other(end));
    }

    /** How the switches of the device's site are set up: two sites of seven are set up otherwise than the rest. */
    public static SwitchManner manner(DemoDevice device) {
        return switch (device.site() % 7) {
            case 4 -> SwitchManner.WITHOUT_LLDP;
            case 5 -> SwitchManner.WITH_VLANS;
            default -> SwitchManner.PLAIN;
        };
    }

    /** Whether the device sends LLDP frames: the smallest access point and the other maker's cannot, switches only where it is on. */
    public static boolean sendsLldp(DemoDevice device) {
        return switch (device.kind()) {
            case ACCESS_POINT -> device.model() != DemoModel.TR_10 && device.model() != DemoModel.GI_7;
            case NETWORK_SWITCH -> manner(device).lldp();
            case GATEWAY -> true;
        };
    }
}
