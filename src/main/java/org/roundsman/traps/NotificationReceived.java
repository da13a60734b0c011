package org.roundsman.traps;

import java.time.Instant;

/**
 * A notification of a device is on its timeline, and that is committed. Observed on the thread that stores notifications:
 * do only what is quick there. Notifications without a name, and those that are summed, are not told.
 *
 * @param oid snmpTrapOID in dotted numbers
 * @param at when it was received
 */
public record NotificationReceived(long deviceId, String oid, Instant at) {}
