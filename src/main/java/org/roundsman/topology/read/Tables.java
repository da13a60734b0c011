package org.roundsman.topology.read;

import java.util.List;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.snmp.TableQuestion;

/** The tables that tell about wiring, as their standards number them. */
public final class Tables {

    /** SNMPv2-MIB (RFC 3418). */
    static final String SYSTEM = "1.3.6.1.2.1.1";

    static final int UP_TIME = 3;
    static final int SYSTEM_NAME = 5;

    /** IF-MIB (RFC 2863): ifEntry. */
    static final String INTERFACES = "1.3.6.1.2.1.2.2.1";

    static final int IF_DESCRIPTION = 2;
    static final int IF_TYPE = 3;
    static final int IF_MAC = 6;
    static final int IF_STATE = 8;

    /** IF-MIB: ifXEntry. */
    static final String MORE_INTERFACES = "1.3.6.1.2.1.31.1.1.1";

    static final int IF_NAME = 1;
    static final int IF_MBIT = 15;
    static final int IF_ALIAS = 18;

    /** BRIDGE-MIB (RFC 4188). */
    static final String BRIDGE = "1.3.6.1.2.1.17.1";

    static final int BRIDGE_MAC = 1;
    static final String BRIDGE_PORTS = "1.3.6.1.2.1.17.1.4.1";
    static final int PORT_INTERFACE = 2;
    static final String FORWARDING = "1.3.6.1.2.1.17.4.3.1";

    /** Q-BRIDGE-MIB (RFC 4363): dot1qTpFdbEntry. */
    static final String VLAN_FORWARDING = "1.3.6.1.2.1.17.7.1.2.2.1";

    static final int LEARNT_PORT = 2;
    static final int LEARNT_STATUS = 3;

    /** LLDP-MIB (IEEE 802.1AB-2005). */
    static final String OWN_LLDP = "1.0.8802.1.1.2.1.3";

    static final int OWN_CHASSIS_KIND = 1;
    static final int OWN_CHASSIS = 2;
    static final int OWN_NAME = 3;
    static final String OWN_PORTS = "1.0.8802.1.1.2.1.3.7.1";
    static final int OWN_PORT_KIND = 2;
    static final int OWN_PORT = 3;
    static final int OWN_PORT_TEXT = 4;
    static final String NEIGHBOURS = "1.0.8802.1.1.2.1.4.1.1";
    static final int CHASSIS_KIND = 4;
    static final int CHASSIS = 5;
    static final int PORT_KIND = 6;
    static final int PORT = 7;
    static final int PORT_TEXT = 8;
    static final int NAME = 9;
    static final int TEXT = 10;
    static final int ABILITIES = 12;
    static final String ADDRESSES = "1.0.8802.1.1.2.1.4.2.1";
    static final int ADDRESS_INTERFACE_KIND = 3;

    /** POWER-ETHERNET-MIB (RFC 3621): pethPsePortEntry. */
    static final String POWER_PORTS = "1.3.6.1.2.1.105.1.1.1";

    static final int POWER_ENABLED = 3;
    static final int POWER_STATE = 6;
    static final int POWER_CLASS = 10;

    /** POWER-ETHERNET-MIB: pethMainPseEntry. */
    static final String SUPPLIES = "1.3.6.1.2.1.105.1.3.1.1";

    static final int SUPPLY_WATTS = 2;
    static final int SUPPLY_STATE = 3;
    static final int SUPPLY_USED = 4;

    private static final TableQuestion OWN = TableQuestion.of(OWN_LLDP, OWN_CHASSIS_KIND, OWN_CHASSIS, OWN_NAME);
    private static final TableQuestion OWN_PORT_TABLE =
            TableQuestion.of(OWN_PORTS, OWN_PORT_KIND, OWN_PORT, OWN_PORT_TEXT);
    private static final TableQuestion NEIGHBOUR_TABLE =
            TableQuestion.of(NEIGHBOURS, CHASSIS_KIND, CHASSIS, PORT_KIND, PORT, PORT_TEXT, NAME, TEXT, ABILITIES);
    private static final TableQuestion ADDRESS_TABLE = TableQuestion.of(ADDRESSES, ADDRESS_INTERFACE_KIND);
    private static final TableQuestion POWER_TABLE =
            TableQuestion.of(POWER_PORTS, POWER_ENABLED, POWER_STATE, POWER_CLASS);
    private static final TableQuestion SUPPLY_TABLE =
            TableQuestion.of(SUPPLIES, SUPPLY_WATTS, SUPPLY_STATE, SUPPLY_USED);

    private static final List<TableQuestion> OF_SWITCH = List.of(
            TableQuestion.of(SYSTEM, UP_TIME, SYSTEM_NAME),
            TableQuestion.of(INTERFACES, IF_DESCRIPTION, IF_TYPE, IF_MAC, IF_STATE),
            TableQuestion.of(MORE_INTERFACES, IF_NAME, IF_MBIT, IF_ALIAS),
            TableQuestion.of(BRIDGE, BRIDGE_MAC),
            TableQuestion.of(BRIDGE_PORTS, PORT_INTERFACE),
            OWN,
            OWN_PORT_TABLE,
            NEIGHBOUR_TABLE,
            ADDRESS_TABLE,
            POWER_TABLE,
            SUPPLY_TABLE,
            TableQuestion.of(FORWARDING, LEARNT_PORT, LEARNT_STATUS),
            TableQuestion.of(VLAN_FORWARDING, LEARNT_PORT, LEARNT_STATUS));

    private static final List<TableQuestion> OF_ACCESS_POINT = List.of(
            TableQuestion.of(SYSTEM, UP_TIME, SYSTEM_NAME),
            TableQuestion.of(INTERFACES, IF_DESCRIPTION, IF_TYPE, IF_MAC, IF_STATE),
            TableQuestion.of(MORE_INTERFACES, IF_NAME, IF_MBIT),
            OWN,
            OWN_PORT_TABLE,
            NEIGHBOUR_TABLE,
            ADDRESS_TABLE);

    private static final List<TableQuestion> STATES = List.of(
            TableQuestion.of(SYSTEM, UP_TIME),
            TableQuestion.of(INTERFACES, IF_STATE),
            TableQuestion.of(MORE_INTERFACES, IF_MBIT),
            POWER_TABLE,
            SUPPLY_TABLE);

    private Tables() {}

    /** Everything that a device of that kind can tell about wiring. */
    public static List<TableQuestion> of(DeviceKind kind) {
        return kind == DeviceKind.ACCESS_POINT ? OF_ACCESS_POINT : OF_SWITCH;
    }

    /** The few that change by the minute: states of ports and of power. */
    public static List<TableQuestion> states() {
        return STATES;
    }
}
