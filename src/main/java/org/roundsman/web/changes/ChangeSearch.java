package org.roundsman.web.changes;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.audit.AuditLog;
import org.roundsman.audit.AuditQuery;

/** What the address of the page asks for, as text: whatever makes no sense in it is left open. Times are UTC. */
record ChangeSearch(
        @RestQuery String text,
        @RestQuery String who,
        @RestQuery String kind,
        @RestQuery String subject,
        @RestQuery String customer,
        @RestQuery String action,
        @RestQuery String from,
        @RestQuery String to,
        @RestQuery String before) {

    private static final int MICROS = 1_000_000;

    ChangeSearch {
        text = text == null ? "" : text.strip();
        who = who == null ? "" : who.strip();
        kind = kind == null ? "" : kind;
        subject = subject == null ? "" : subject;
        customer = customer == null ? "" : customer;
        action = action == null ? "" : action;
        from = from == null ? "" : from;
        to = to == null ? "" : to;
        before = before == null ? "" : before;
    }

    AuditQuery query() {
        return new AuditQuery(
                text.replace("\0", ""),
                who.replace("\0", ""),
                kind.replace("\0", ""),
                number(subject),
                number(customer),
                action.replace("\0", ""),
                moment(from),
                // The field knows minutes: the whole minute that a person names is meant.
                moment(to) == null ? null : moment(to).plus(1, ChronoUnit.MINUTES));
    }

    /** Where the page before this one ended. */
    Optional<AuditLog.Place> place() {
        String[] parts = before.split("-", 2);
        Long micros = number(parts[0]);
        Long id = parts.length == 2 ? number(parts[1]) : null;
        if (micros == null || id == null) {
            return Optional.empty();
        }
        Instant at = Instant.ofEpochSecond(micros / MICROS, micros % MICROS * 1_000);
        return Optional.of(new AuditLog.Place(at, id));
    }

    static String text(AuditLog.Place place) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, place.at()) + "-" + place.id();
    }

    /** Whether anything narrows the search. */
    boolean narrowed() {
        return !address("").isEmpty();
    }

    /** Whether it is about one subject alone. */
    public boolean ofOne() {
        return number(subject) != null && !kind.isEmpty();
    }

    /**
     * The question mark and what follows it in the address of the same search.
     *
     * @param place where to go on, or empty for the newest
     */
    String address(String place) {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("text", text);
        parts.put("who", who);
        parts.put("kind", kind);
        parts.put("subject", subject);
        parts.put("customer", customer);
        parts.put("action", action);
        parts.put("from", from);
        parts.put("to", to);
        parts.put("before", place);
        String given = parts.entrySet().stream()
                .filter(part -> !part.getValue().isEmpty())
                .map(part -> part.getKey() + "=" + URLEncoder.encode(part.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return given.isEmpty() ? "" : "?" + given;
    }

    private static Long number(String text) {
        return text.matches("[0-9]{1,17}") ? Long.valueOf(text) : null;
    }

    private static Instant moment(String text) {
        try {
            LocalDateTime entered = text.isEmpty() ? null : LocalDateTime.parse(text);
            boolean sensible = entered != null && entered.getYear() > 0 && entered.getYear() < 10_000;
            return sensible ? entered.toInstant(ZoneOffset.UTC) : null;
        } catch (DateTimeException e) {
            return null; // as any other part of the address that makes no sense
        }
    }
}
