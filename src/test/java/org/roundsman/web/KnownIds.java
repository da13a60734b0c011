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
            Map.entry("firmware-lines", NOTHING),
            Map.entry("policy", NOTHING),
            Map.entry("releases", NOTHING),
            Map.entry("minimums", NOTHING),
            Map.entry("pilots", NOTHING),
            Map.entry("exceptions", NOTHING),
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
            Map.entry("webhooks", NOTHING),
            Map.entry("messages", NOTHING),
            Map.entry("chains", NOTHING),
            Map.entry("calendar", NOTHING),
            Map.entry("report-link", NOTHING),
            Map.entry("tables", "sites"),
            Map.entry("readings", NOTHING));

    private final Map<String, String> ids;

    private KnownIds(Map<String, String> ids) {
        this.ids = ids;
    }

    /** Everything of one customer's place. */
    static KnownIds of(MarkedPlaces.Place place) {
        return new KnownIds(Map.ofEntries(
                Map.entry("customers", String.valueOf(place.customerId())),
                Map.entry("sites", String.valueOf(place.siteId())),
                Map.entry("devices", String.valueOf(place.deviceId())),
                Map.entry("credentials", String.valueOf(place.credentialId())),
                Map.entry("networks", String.valueOf(place.networkId())),
                Map.entry("tokens", String.valueOf(place.tokenId())),
                Map.entry("planned", String.valueOf(place.workId())),
                Map.entry("planned-work", String.valueOf(place.workId())),
                Map.entry("alarms", String.valueOf(place.alarmId())),
                Map.entry("visit", String.valueOf(place.alarmId())),
                Map.entry("purchases", String.valueOf(place.cover().purchaseId())),
                Map.entry("contracts", String.valueOf(place.cover().contractId())),
                Map.entry("evidence", String.valueOf(place.cover().evidenceId())),
                Map.entry("calendars", String.valueOf(place.cover().calendarId())),
                Map.entry("claims", String.valueOf(place.hardware().claimId())),
                Map.entry("units", String.valueOf(place.hardware().unitId())),
                Map.entry("spares", String.valueOf(place.hardware().spareId())),
                Map.entry("store-rooms", String.valueOf(place.hardware().roomId())),
                Map.entry("reports", String.valueOf(place.reports().sentId())),
                Map.entry("mails", String.valueOf(place.reports().mailId())),
                Map.entry("links", String.valueOf(place.reports().linkId())),
                Map.entry("plans", String.valueOf(place.customerId())),
                Map.entry("look", String.valueOf(place.customerId())),
                Map.entry("brands", String.valueOf(place.customerId())),
                Map.entry("people", String.valueOf(place.accountId()))));
    }

    /** What is not there, so that nothing is changed by trying. */
    static KnownIds ofNothing() {
        return new KnownIds(Map.ofEntries(
                Map.entry("customers", NOTHING),
                Map.entry("sites", NOTHING),
                Map.entry("devices", NOTHING),
                Map.entry("credentials", NOTHING),
                Map.entry("networks", NOTHING),
                Map.entry("tokens", NOTHING),
                Map.entry("planned", NOTHING),
                Map.entry("planned-work", NOTHING),
                Map.entry("alarms", NOTHING),
                Map.entry("visit", NOTHING),
                Map.entry("purchases", NOTHING),
                Map.entry("contracts", NOTHING),
                Map.entry("evidence", NOTHING),
                Map.entry("calendars", NOTHING),
                Map.entry("claims", NOTHING),
                Map.entry("units", NOTHING),
                Map.entry("spares", NOTHING),
                Map.entry("store-rooms", NOTHING),
                Map.entry("reports", NOTHING),
                Map.entry("mails", NOTHING),
                Map.entry("links", NOTHING),
                Map.entry("plans", NOTHING),
                Map.entry("look", NOTHING),
                Map.entry("brands", NOTHING),
                Map.entry("people", NOTHING)));
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
