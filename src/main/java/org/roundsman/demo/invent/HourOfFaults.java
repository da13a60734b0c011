package org.roundsman.demo.invent;

import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.Fault;
import org.roundsman.demo.Programme;

/**
 * One hour in which every kind of fault comes once, at the named customers. Faults that take several rounds to be sure of
 * last longer; no two meet the same device, and what silences a part of a site leaves the other faults of that time alone.
 */
public final class HourOfFaults {

    private static final String WHOLE_FLEET = "the whole fleet";
    /** To be blind leaves no site alone, so it does not come each hour. */
    private static final int BLIND_EVERY = 6;

    private final DemoFleet fleet;
    private final List<Programme.Item> items = new ArrayList<>();

    private HourOfFaults(DemoFleet fleet) {
        this.fleet = fleet;
    }

    /** The items for a fleet that holds the named customers. */
    public static List<Programme.Item> of(DemoFleet fleet) {
        HourOfFaults hour = new HourOfFaults(fleet);
        hour.outages();
        hour.troubles();
        return List.copyOf(hour.items);
    }

    private void outages() {
        device(Fault.CREDENTIAL_WRONG, "market-row-ap-02", 1, 8);
        device(Fault.RADIO_OFF, "garden-ap-05", 1, 10);
        site(Fault.UPLINK_LOST, "Station Shop", 2, 13);
        device(Fault.RESTARTED, "castle-gate-ap-02", 3, 5);
        device(Fault.POWER_OFF, "garden-ap-09", 8, 14);
        device(Fault.HUNG, "house-switch-2", 10, 14);
        device(Fault.HUNG, "hill-top-ap-03", 12, 12);
        device(Fault.PORT_DEAD, "main-switch-2", 16, 12);
        device(Fault.FLAPPING, "north-pier-ap-05", 18, 40);
        device(Fault.LINK_DOWN, "office-ap-03", 20, 12);
        device(Fault.AGENT_SILENT, "riverside-gateway", 24, 12);
        device(Fault.PORT_DEAD, "canal-bridge-ap-02", 26, 12);
        items.add(new Programme.Item(Fault.UPLINK_LOST, WHOLE_FLEET, fleet.devices(), 50, 6, BLIND_EVERY));
    }

    /** What is only told when it has gone on for a quarter of an hour or more begins early. */
    private void troubles() {
        device(Fault.ROOM_SATURATED, "south-pier-ap-02", 4, 22);
        device(Fault.RETRIES_MANY, "house-ap-10", 4, 22);
        device(Fault.CLIENTS_MANY, "garden-ap-02", 4, 22);
        device(Fault.PORT_ERRORS, "office-ap-05", 4, 22);
        device(Fault.CPU_BUSY, "hill-top-ap-01", 4, 22);
        device(Fault.MEMORY_SHORT, "gull-island-ap-03", 4, 22);
        device(Fault.SETUP_NETWORK, "yard-ap-04", 6, 36);
        device(Fault.FIRMWARE_UPDATED, "castle-gate-ap-03", 28, 12);
        device(Fault.PORT_SLOW, "exchange-ap-03", 32, 14);
        device(Fault.CLOCK_1970, "yard-ap-06", 32, 15);
        site(Fault.LOSSY, "Lantern Arcade", 36, 12);
    }

    private void device(Fault fault, String name, int minute, int minutes) {
        DemoDevice device = fleet.devices().stream()
                .filter(d -> d.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no device " + name));
        items.add(new Programme.Item(fault, name, List.of(device), minute, minutes, 1));
    }

    private void site(Fault fault, String name, int minute, int minutes) {
        DemoSite site = fleet.sites().stream()
                .filter(s -> s.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no site " + name));
        items.add(new Programme.Item(fault, name, site.devices(), minute, minutes, 1));
    }
}
