package org.roundsman.discovery.recognise;

import java.util.Locale;
import java.util.Set;

/** What a device can be recognised by, the strongest first. */
public enum Mark {
    SERIAL("serial number"),
    BASE_MAC("base MAC address"),
    RADIO_MAC("radio MAC address"),
    ENGINE_ID("engine ID");

    /** What makers write where they had nothing to write; common practice, no source. */
    private static final Set<String> FILLERS = Set.of(
            "NONE",
            "NULL",
            "N/A",
            "NA",
            "UNKNOWN",
            "DEFAULT",
            "DEFAULT STRING",
            "NOT AVAILABLE",
            "NOT SPECIFIED",
            "NOT APPLICABLE",
            "SERIAL",
            "SERIAL NUMBER",
            "SYSTEM SERIAL NUMBER",
            "TO BE FILLED BY O.E.M.");

    private static final int SHORTEST_SERIAL = 4;
    private static final int MAC_LENGTH = 17;
    /** RFC 3411: an engine ID has 5 to 32 octets. */
    private static final int SHORTEST_ENGINE_ID = 10;

    private final String word;

    Mark(String word) {
        this.word = word;
    }

    /** What pages call it. */
    public String word() {
        return word;
    }

    /** The value in the one form in which values are compared; empty when it proves nothing. */
    public String clean(String value) {
        String text = value == null ? "" : value.strip();
        return switch (this) {
            case SERIAL -> isSerial(text.toUpperCase(Locale.ROOT)) ? text.toUpperCase(Locale.ROOT) : "";
            case BASE_MAC, RADIO_MAC -> isMac(text.toLowerCase(Locale.ROOT)) ? text.toLowerCase(Locale.ROOT) : "";
            case ENGINE_ID -> isEngineId(text) ? text.toLowerCase(Locale.ROOT) : "";
        };
    }

    private static boolean isSerial(String text) {
        return text.length() >= SHORTEST_SERIAL
                && !FILLERS.contains(text)
                && text.chars().distinct().count() > 1
                && !"01234567890123456789".contains(text)
                && !"98765432109876543210".contains(text)
                && !"0123456789ABCDEF".equals(text);
    }

    /** No group address (IEEE 802: the lowest bit of the first octet), not all zeros. */
    private static boolean isMac(String text) {
        return text.length() == MAC_LENGTH
                && text.matches("([0-9a-f]{2}:){5}[0-9a-f]{2}")
                && Character.digit(text.charAt(1), 16) % 2 == 0
                && !text.equals("00:00:00:00:00:00");
    }

    /** RFC 3411, SnmpEngineID: neither all zeros nor all ones. */
    private static boolean isEngineId(String text) {
        return text.length() >= SHORTEST_ENGINE_ID
                && text.matches("[0-9A-Fa-f]+")
                && !text.matches("0+")
                && !text.matches("[Ff]+");
    }
}
