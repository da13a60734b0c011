package org.roundsman.web.firmware;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStatus;

/** What the address of a list asks for, as text: whatever makes no sense in it is left open. */
record FirmwareSearch(
        @RestQuery String status,
        @RestQuery String customer,
        @RestQuery String model,
        @RestQuery String version,
        @RestQuery String site,
        @RestQuery String mixed,
        @RestQuery String page) {

    /** Asks for the devices that no version was read of; versions begin otherwise. */
    static final String NO_VERSION = "-none";

    FirmwareSearch {
        status = text(status);
        customer = id(customer);
        model = id(model);
        version = text(version);
        site = id(site);
        mixed = text(mixed);
        page = text(page);
    }

    private static String text(String value) {
        return value == null ? "" : value.strip();
    }

    /** An id that makes no sense counts as not said. */
    private static String id(String value) {
        return text(value).matches("[0-9]{1,18}") ? text(value) : "";
    }

    /** The word of a status in an address. */
    static String word(FirmwareStatus status) {
        return status.word().replace(' ', '-');
    }

    private Optional<FirmwareStatus> wanted() {
        return java.util.Arrays.stream(FirmwareStatus.values())
                .filter(one -> word(one).equals(status))
                .findFirst();
    }

    boolean takes(FirmwareState state) {
        return wanted().map(one -> one == state.status()).orElse(true)
                && is(customer, state.place().customerId())
                && is(model, state.place().modelId().orElse(0))
                && is(site, state.place().siteId())
                && (version.isEmpty() || state.version().equals(version.equals(NO_VERSION) ? "" : version))
                && (mixed.isEmpty() || state.mixed());
    }

    private static boolean is(String wanted, long id) {
        return wanted.isEmpty() || Long.parseLong(wanted) == id;
    }

    int number() {
        return page.matches("[0-9]{1,6}") ? Math.max(1, Integer.parseInt(page)) : 1;
    }

    public boolean onlyMixed() {
        return !mixed.isEmpty();
    }

    /** The question mark and what follows it, for that page of the same search; without it for the first. */
    String address(int number) {
        return query(Map.of("page", number == 1 ? "" : String.valueOf(number)));
    }

    /** The same search with some parts replaced. */
    String query(Map<String, String> other) {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("status", status);
        parts.put("customer", customer);
        parts.put("model", model);
        parts.put("version", version);
        parts.put("site", site);
        parts.put("mixed", mixed);
        parts.putAll(other);
        String given = parts.entrySet().stream()
                .filter(part -> !part.getValue().isEmpty())
                .map(part -> part.getKey() + "=" + URLEncoder.encode(part.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return given.isEmpty() ? "" : "?" + given;
    }
}
