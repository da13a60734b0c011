package org.roundsman.web.changes;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditEntry;

/**
 * One change as it is shown.
 *
 * @param time in UTC, in words
 * @param at the same for machines
 * @param who who stands behind it
 * @param what what was changed, beside its name
 * @param link page of what was changed, or empty
 * @param which names of the fields that changed, or empty
 * @param customer whose data it is, or empty
 * @param how the way by which it came in, and from where
 */
record ChangeLine(
        long id,
        String time,
        String at,
        String who,
        String action,
        String what,
        String name,
        String which,
        String link,
        String customer,
        String how,
        List<AuditEntry.FieldChange> fields) {

    private static final int MOST_NAMED = 3;

    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm:ss 'UTC'", Locale.ENGLISH);

    static ChangeLine of(AuditEntry entry, String customer) {
        return new ChangeLine(
                entry.id(),
                time(entry.at()),
                entry.at().toString(),
                entry.actor().name(),
                entry.action(),
                entry.subject().kind(),
                entry.subject().name(),
                which(entry),
                link(entry.subject()),
                customer.equals(entry.subject().name()) ? "" : customer,
                how(entry.actor()),
                entry.changes());
    }

    private static String which(AuditEntry entry) {
        List<AuditEntry.FieldChange> changes = entry.changes();
        if (!entry.action().equals("changed")) {
            return "";
        }
        String first = changes.stream()
                .limit(MOST_NAMED)
                .map(AuditEntry.FieldChange::field)
                .collect(Collectors.joining(", "));
        return changes.size() <= MOST_NAMED ? first : first + " and " + (changes.size() - MOST_NAMED) + " more";
    }

    private static String time(Instant at) {
        return TIME.format(at.atOffset(ZoneOffset.UTC));
    }

    /** What was removed has no page any more: that page says so. */
    private static String link(AuditEntry.Subject subject) {
        if (subject.id() == null) {
            return "";
        }
        return switch (subject.kind()) {
            case "device" -> "/devices/" + subject.id();
            case "site" -> "/sites/" + subject.id();
            case "credentials" -> "/credentials/" + subject.id();
            case "planned work" -> "/planned/" + subject.id();
            case "alarm" -> "/alarms/" + subject.id();
            case "purchase" -> "/warranty/units/purchases/" + subject.id();
            case "contract" -> "/warranty/contracts/" + subject.id();
            case "customer" -> "/?customer=" + subject.id();
            case "claim" -> "/claims/" + subject.id();
            case "spare" -> "/spares/" + subject.id();
            case "store room" -> "/store-rooms/" + subject.id();
            case "unit in place" -> "/devices/" + subject.id();
            default -> "";
        };
    }

    private static String how(Actor actor) {
        String token = actor.token().isEmpty() ? "" : " with the token “" + actor.token() + "”";
        String address = actor.address().isEmpty() ? "" : " from " + actor.address();
        return "by " + (actor.via() == Actor.Via.PAGE ? "a page" : actor.via().word()) + token + address;
    }
}
