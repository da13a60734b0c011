package org.roundsman.snmp;

/**
 * One variable as the device sent it.
 *
 * @param oid dotted numbers
 * @param name what the profile calls it, or empty
 * @param syntax SMI type, such as Counter32
 * @param value as text
 */
public record RawAnswer(String oid, String name, String syntax, String value) {}
