package org.roundsman.measure;

/**
 * One network (SSID) of one access point in one reading.
 *
 * @param ssid as text; octets that are not UTF-8 are written as {@code \xHH}
 * @param values figures of {@link Subject#NETWORK}
 */
public record NetworkReading(String ssid, Values values) {}
