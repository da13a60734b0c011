package org.roundsman.discovery.run;

import org.roundsman.snmp.SnmpAccess;

/** Opened credentials that a sweep tries. */
public record Key(long credentialId, SnmpAccess access) {}
