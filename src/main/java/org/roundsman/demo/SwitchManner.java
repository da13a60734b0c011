package org.roundsman.demo;

/** How the switches of a site are set up, which decides what they tell about who hangs where. */
public enum SwitchManner {
    /** LLDP neighbours, and a forwarding table without VLANs (BRIDGE-MIB). */
    PLAIN,
    /** LLDP is off: the forwarding table (BRIDGE-MIB) is all there is. */
    WITHOUT_LLDP,
    /** LLDP neighbours, and a forwarding table per VLAN (Q-BRIDGE-MIB) in place of the plain one. */
    WITH_VLANS;

    /** Whether the switch speaks LLDP and tells its neighbours. */
    public boolean lldp() {
        return this != WITHOUT_LLDP;
    }
}
