package org.roundsman.web.alarms;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.alarms.AlarmSearch;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.audit.SearchWords;

/** What the address of the history asks for, as text: whatever makes no sense in it is left open, and said. Times are UTC. */
record HistorySearch(
        @RestQuery String text,
        @RestQuery String customer,
        @RestQuery String site,
        @RestQuery String device,
        @RestQuery String type,
        @RestQuery String severity,
        @RestQuery String state,
        @RestQuery String from,
        @RestQuery String to,
        @RestQuery String page) {

    private static final int A_PAGE = 50;

    HistorySearch {
        text = given(text).strip();
        customer = given(customer);
        site = given(site);
        device = given(device);
        type = given(type);
        severity = given(severity);
        state = given(state);
        from = given(from);
        to = given(to);
        page = given(page);
    }

    AlarmSearch search() {
        return new AlarmSearch(
                text,
                number(customer),
                number(site),
                number(device),
                AlarmType.byId(type),
                Arrays.stream(Severity.values())
                        .filter(one -> one.word().equals(severity))
                        .findFirst(),
                moment(from),
                // The field knows minutes: the whole minute that a person names is meant.
                moment(to).map(at -> at.plus(1, ChronoUnit.MINUTES)),
                Arrays.stream(AlarmSearch.State.values())
                        .filter(one ->
                                one.name().toLowerCase(java.util.Locale.ROOT).equals(state))
                        .findFirst()
                        .orElse(AlarmSearch.State.ANY),
                (int) Math.max(1, Math.min(number(page).orElse(1), Integer.MAX_VALUE / A_PAGE)),
                A_PAGE);
    }

    /** Whether anything narrows the search. */
    boolean narrowed() {
        return !address(1).equals("/alarms");
    }

    /** What is asked for but makes no sense, in one sentence; empty where everything does. */
    String leftOut() {
        AlarmSearch wanted = search();
        List<String> parts = new ArrayList<>();
        add(
                parts,
                "the words, which are signs alone",
                text,
                !SearchWords.question(text).isEmpty());
        add(parts, "the customer", customer, wanted.customerId().isPresent());
        add(parts, "the site", site, wanted.siteId().isPresent());
        add(parts, "the device", device, wanted.deviceId().isPresent());
        add(parts, "the kind", type, wanted.type().isPresent());
        add(parts, "the severity", severity, wanted.severity().isPresent());
        add(parts, "the state", state, wanted.state() != AlarmSearch.State.ANY || state.equals("any"));
        add(parts, "the time from which it was active", from, wanted.from().isPresent());
        add(parts, "the time up to which it was raised", to, wanted.to().isPresent());
        return parts.isEmpty() ? "" : "Left out, because it cannot be read: " + String.join("; ", parts) + ".";
    }

    private static void add(List<String> parts, String name, String asked, boolean understood) {
        if (!asked.isEmpty() && !understood) {
            parts.add(name);
        }
    }

    /** The address of a page of the same search. */
    String address(int number) {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("text", text);
        parts.put("customer", customer);
        parts.put("site", site);
        parts.put("device", device);
        parts.put("type", type);
        parts.put("severity", severity);
        parts.put("state", state);
        parts.put("from", from);
        parts.put("to", to);
        parts.put("page", number == 1 ? "" : String.valueOf(number));
        String given = parts.entrySet().stream()
                .filter(part -> !part.getValue().isEmpty())
                .map(part -> part.getKey() + "=" + URLEncoder.encode(part.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return given.isEmpty() ? "/alarms" : "/alarms?" + given;
    }

    private static String given(String text) {
        return text == null ? "" : text.replace("\0", "");
    }

    private static OptionalLong number(String text) {
        return text.matches("[0-9]{1,17}") ? OptionalLong.of(Long.parseLong(text)) : OptionalLong.empty();
    }

    private static Optional<Instant> moment(String text) {
        try {
            return Optional.of(text)
                    .filter(entered -> !entered.isEmpty())
                    .map(LocalDateTime::parse)
                    .filter(entered -> entered.getYear() > 0 && entered.getYear() < 10_000)
                    .map(entered -> entered.toInstant(ZoneOffset.UTC));
        } catch (DateTimeException e) {
            return Optional.empty(); // as any other part of the address that makes no sense
        }
    }
}
