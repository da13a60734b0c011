package org.roundsman.web;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Which id stands for a parameter of an address: chosen by the part of the address right before it. */
final class KnownIds {

    /** An id that nothing has. */
    static final String NOTHING = "999999999";

    private static final Pattern PARAMETER = Pattern.compile("([^/]+)/\\{([^}]+)}");

    /** What is no single customer's, so that any value does: things that nobody made, and fixed words. */
    private static final Map<String, String> NOBODYS = Map.ofEntries(
            Map.entry("models", NOTHING),
            Map.entry("problems", "refused"),
            Map.entry("imports", NOTHING),
            Map.entry("templates", "devices"),
            Map.entry("exports", "devices"),
            Map.entry("profiles", NOTHING),
            Map.entry("built-in", "host"),
            Map.entry("versions", NOTHING),
            Map.entry("walks", NOTHING),
            Map.entry("rules", "utilisation-high"),
            Map.entry("overrides", NOTHING),
            Map.entry("values", NOTHING),
            Map.entry("tries", NOTHING),
            Map.entry("readings", NOTHING));

    private final Map<String, String> ids;

    private KnownIds(Map<String, String> ids) {
        this.ids = ids;
    }

    /** Everything of one customer's place. */
    static KnownIds of(MarkedPlaces.Place place) {
        return new KnownIds(Map.of(
                "customers", String.valueOf(place.customerId()),
                "sites", String.valueOf(place.siteId()),
                "devices", String.valueOf(place.deviceId()),
                "credentials", String.valueOf(place.credentialId()),
                "networks", String.valueOf(place.networkId()),
                "tokens", String.valueOf(place.tokenId()),
                "alarms", String.valueOf(place.alarmId()),
                "visit", String.valueOf(place.alarmId()),
                "people", String.valueOf(place.accountId())));
    }

    /** What is not there, so that nothing is changed by trying. */
    static KnownIds ofNothing() {
        return new KnownIds(Map.of(
                "customers", NOTHING,
                "sites", NOTHING,
                "devices", NOTHING,
                "credentials", NOTHING,
                "networks", NOTHING,
                "tokens", NOTHING,
                "alarms", NOTHING,
                "visit", NOTHING,
                "people", NOTHING));
    }

    /** Whether something of the place is named in that address. */
    boolean namesAPlace(String path) {
        return PARAMETER.matcher(path).results().anyMatch(found -> ids.containsKey(found.group(1)));
    }

    String fill(String path) {
        Matcher parameter = PARAMETER.matcher(path);
        StringBuilder filled = new StringBuilder();
        while (parameter.find()) {
            String value = id(path, parameter.group(1), parameter.group(2));
            parameter.appendReplacement(filled, Matcher.quoteReplacement(parameter.group(1) + "/" + value));
        }
        return parameter.appendTail(filled).toString();
    }

    private String id(String path, String before, String name) {
        String id = ids.getOrDefault(before, NOBODYS.get(before));
        if (id == null) {
            throw new AssertionError("Nobody said which id of another customer's place stands for {" + name + "} in "
                    + path + ". Say so in KnownIds under “" + before + "”: in both lists of a place's ids where it can"
                    + " be a customer's (and give MarkedPlaces one), or in NOBODYS where it cannot.");
        }
        return id;
    }
}
