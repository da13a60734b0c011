package org.roundsman.snmp.walk;

import java.util.HashMap;
import java.util.Map;
import org.snmp4j.smi.OID;

/** What published MIB modules call a few subtrees that devices commonly have. The module stands beside each. */
final class StandardNames {

    private static final Map<OID, String> NAMES = new HashMap<>();

    static {
        String[][] names = {
            {"1.0.8802.1.1.2.1.3", "lldpLocalSystemData (LLDP-MIB)"},
            {"1.0.8802.1.1.2.1.4.1.1", "lldpRemEntry (LLDP-MIB)"},
            {"1.0.8802.1.1.2", "lldpMIB (LLDP-MIB)"},
            {"1.2.840.10036", "ieee802dot11 (IEEE802dot11-MIB)"},
            {"1.3.6.1.2.1.1", "system (SNMPv2-MIB, RFC 3418)"},
            {"1.3.6.1.2.1.1.9.1", "sysOREntry (SNMPv2-MIB, RFC 3418)"},
            {"1.3.6.1.2.1.2", "interfaces (IF-MIB, RFC 2863)"},
            {"1.3.6.1.2.1.2.2.1", "ifEntry (IF-MIB, RFC 2863)"},
            {"1.3.6.1.2.1.4", "ip (IP-MIB, RFC 4293)"},
            {"1.3.6.1.2.1.5", "icmp (IP-MIB, RFC 4293)"},
            {"1.3.6.1.2.1.6", "tcp (TCP-MIB, RFC 4022)"},
            {"1.3.6.1.2.1.7", "udp (UDP-MIB, RFC 4113)"},
            {"1.3.6.1.2.1.10", "transmission (media-specific MIB modules)"},
            {"1.3.6.1.2.1.11", "snmp (SNMPv2-MIB, RFC 3418)"},
            {"1.3.6.1.2.1.17", "dot1dBridge (BRIDGE-MIB, RFC 4188)"},
            {"1.3.6.1.2.1.17.4.3.1", "dot1dTpFdbEntry (BRIDGE-MIB, RFC 4188)"},
            {"1.3.6.1.2.1.25", "host (HOST-RESOURCES-MIB, RFC 2790)"},
            {"1.3.6.1.2.1.25.2.3.1", "hrStorageEntry (HOST-RESOURCES-MIB, RFC 2790)"},
            {"1.3.6.1.2.1.25.3.3.1", "hrProcessorEntry (HOST-RESOURCES-MIB, RFC 2790)"},
            {"1.3.6.1.2.1.25.4.2.1", "hrSWRunEntry (HOST-RESOURCES-MIB, RFC 2790)"},
            {"1.3.6.1.2.1.31", "ifMIB (IF-MIB, RFC 2863)"},
            {"1.3.6.1.2.1.31.1.1.1", "ifXEntry (IF-MIB, RFC 2863)"},
            {"1.3.6.1.2.1.33", "upsMIB (UPS-MIB, RFC 1628)"},
            {"1.3.6.1.2.1.47", "entityMIB (ENTITY-MIB, RFC 6933)"},
            {"1.3.6.1.2.1.47.1.1.1.1", "entPhysicalEntry (ENTITY-MIB, RFC 6933)"},
            {"1.3.6.1.2.1.99.1.1.1", "entPhySensorEntry (ENTITY-SENSOR-MIB, RFC 3433)"},
            {"1.3.6.1.2.1.105", "powerEthernetMIB (POWER-ETHERNET-MIB, RFC 3621)"},
            {"1.3.6.1.2.1.105.1.1.1", "pethPsePortEntry (POWER-ETHERNET-MIB, RFC 3621)"},
            {"1.3.6.1.4.1", "enterprises: objects of a maker's own"},
            {"1.3.6.1.6.3.10", "snmpFrameworkMIB (SNMP-FRAMEWORK-MIB, RFC 3411)"},
            {"1.3.6.1.6.3.15", "snmpUsmMIB (SNMP-USER-BASED-SM-MIB, RFC 3414)"},
            {"1.3.6.1.6.3.16", "snmpVacmMIB (SNMP-VIEW-BASED-ACM-MIB, RFC 3415)"},
            {"1.3.6.1.6.3", "snmpModules (SNMPv2-SMI, RFC 2578)"},
        };
        for (String[] name : names) {
            NAMES.put(new OID(name[0]), name[1]);
        }
    }

    private StandardNames() {}

    /** The name of the smallest known subtree that this is in; empty when there is none. */
    static String nearest(OID oid) {
        for (int length = oid.size(); length > 0; length--) {
            String name = NAMES.get(new OID(oid.getValue(), 0, length));
            if (name != null) {
                return name;
            }
        }
        return "";
    }
}
