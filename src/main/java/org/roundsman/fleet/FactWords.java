package org.roundsman.fleet;

import java.util.Locale;
import java.util.Map;

/** What events call the facts of a device. */
final class FactWords {

    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("NAME", "Own name"),
            Map.entry("DESCRIPTION", "Description"),
            Map.entry("OBJECT_ID", "Object identifier"),
            Map.entry("LOCATION", "Location"),
            Map.entry("CONTACT", "Contact"),
            Map.entry("MAKER", "Maker"),
            Map.entry("MODEL", "Model"),
            Map.entry("SERIAL", "Serial number"),
            Map.entry("FIRMWARE", "Firmware"),
            Map.entry("HARDWARE_REVISION", "Hardware revision"),
            Map.entry("BASE_MAC", "MAC address"),
            Map.entry("ENGINE_ID", "SNMP engine ID"));

    private FactWords() {}

    /** A fact as a sentence begins with it. */
    static String of(String fact) {
        String plain = fact.toLowerCase(Locale.ROOT).replace('_', ' ');
        return WORDS.getOrDefault(
                fact, plain.isEmpty() ? fact : Character.toUpperCase(plain.charAt(0)) + plain.substring(1));
    }
}
