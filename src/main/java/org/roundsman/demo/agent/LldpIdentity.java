package org.roundsman.demo.agent;

import java.net.InetAddress;
import java.net.UnknownHostException;
import org.roundsman.demo.DemoDevice;

/**
 * By which ids a model names itself and its ports to neighbours. Each model has its own habit, so that all kinds of ids
 * occur.
 *
 * @param chassisSubtype chassisComponent 1, interfaceAlias 2, portComponent 3, macAddress 4, networkAddress 5,
 *     interfaceName 6, local 7
 * @param portSubtype interfaceAlias 1, portComponent 2, macAddress 3, networkAddress 4, interfaceName 5, agentCircuitId
 *     6, local 7
 * @param capabilities as one octet of BITS, other 0 first: bridge 0x20, wlanAccessPoint 0x10, router 0x08
 */
record LldpIdentity(int chassisSubtype, int portSubtype, int capabilities) {

    private static final int CHASSIS_COMPONENT = 1;
    private static final int CHASSIS_MAC = 4;
    private static final int CHASSIS_ADDRESS = 5;
    private static final int CHASSIS_LOCAL = 7;
    private static final int PORT_ALIAS = 1;
    private static final int PORT_MAC = 3;
    private static final int PORT_NAME = 5;
    private static final int PORT_LOCAL = 7;
    private static final int IPV4 = 1;
    private static final int BRIDGE_AND_WLAN = 0x30;
    private static final int BRIDGE = 0x20;
    private static final int BRIDGE_AND_ROUTER = 0x28;

    static LldpIdentity of(DemoDevice device) {
        return switch (device.model()) {
            case TR_10, TR_22 -> new LldpIdentity(CHASSIS_MAC, PORT_MAC, BRIDGE_AND_WLAN);
            case TR_33 -> new LldpIdentity(CHASSIS_MAC, PORT_NAME, BRIDGE_AND_WLAN);
            case TR_50X -> new LldpIdentity(CHASSIS_ADDRESS, PORT_LOCAL, BRIDGE_AND_WLAN);
            case TS_24 -> new LldpIdentity(CHASSIS_MAC, PORT_NAME, BRIDGE);
            case TG_4 -> new LldpIdentity(CHASSIS_LOCAL, PORT_ALIAS, BRIDGE_AND_ROUTER);
            case GI_7 -> new LldpIdentity(CHASSIS_COMPONENT, PORT_ALIAS, BRIDGE_AND_WLAN);
        };
    }

    static byte[] chassisId(DemoDevice device) {
        return switch (of(device).chassisSubtype()) {
            case CHASSIS_MAC -> InterfaceObjects.mac(device.mac());
            case CHASSIS_ADDRESS -> withFamily(address(device));
            case CHASSIS_COMPONENT -> AgentState.text(device.serial());
            default -> AgentState.text(device.name());
        };
    }

    static byte[] portId(DemoDevice device, Port port) {
        return switch (of(device).portSubtype()) {
            case PORT_MAC -> InterfaceObjects.mac(device.mac() + port.macOffset());
            case PORT_LOCAL -> AgentState.text(Integer.toString(port.number()));
            default -> AgentState.text(port.name());
        };
    }

    /** The four octets at which its agent answers. */
    static byte[] address(DemoDevice device) {
        try {
            // a dotted address is not looked up
            return InetAddress.getByName(device.host()).getAddress();
        } catch (UnknownHostException e) {
            throw new IllegalStateException("an invented device has a dotted address, not " + device.host(), e);
        }
    }

    /** The first octet of a networkAddress is its family. */
    private static byte[] withFamily(byte[] address) {
        byte[] octets = new byte[1 + address.length];
        octets[0] = IPV4;
        System.arraycopy(address, 0, octets, 1, address.length);
        return octets;
    }
}
