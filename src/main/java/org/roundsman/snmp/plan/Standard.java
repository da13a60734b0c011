package org.roundsman.snmp.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import org.snmp4j.smi.OID;

/** The few objects that every visit may ask, whatever the profiles say. */
public final class Standard {

    /** SNMPv2-MIB (RFC 3418). */
    static final OID SYS_UP_TIME = new OID("1.3.6.1.2.1.1.3.0");

    static final OID SYS_OBJECT_ID = new OID("1.3.6.1.2.1.1.2.0");

    /** SNMP-FRAMEWORK-MIB (RFC 3411). */
    static final OID ENGINE_BOOTS = new OID("1.3.6.1.6.3.10.2.1.2.0");

    static final OID ENGINE_TIME = new OID("1.3.6.1.6.3.10.2.1.3.0");

    private Standard() {}

    /** Their names as the MIB modules have them. */
    public static Map<OID, String> names() {
        Map<OID, String> names = new LinkedHashMap<>();
        names.put(SYS_UP_TIME, "sysUpTime");
        names.put(SYS_OBJECT_ID, "sysObjectID");
        names.put(ENGINE_BOOTS, "snmpEngineBoots");
        names.put(ENGINE_TIME, "snmpEngineTime");
        return names;
    }
}
