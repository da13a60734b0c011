package org.roundsman.audit;

import java.time.Instant;

/**
 * Which changes to look for. Empty and null leave a matter open.
 *
 * @param text words that all must occur in the entry, each by its beginning, without regard to case
 * @param actor sign-in name, without regard to case
 * @param kind what was changed, such as {@code device}
 * @param subjectId which one of that kind
 * @param customerId whose data was changed
 * @param action such as {@code removed}
 * @param from at this moment or later
 * @param to before this moment
 */
public record AuditQuery(
        String text,
        String actor,
        String kind,
        Long subjectId,
        Long customerId,
        String action,
        Instant from,
        Instant to) {

    /** Everything. */
    public static AuditQuery all() {
        return new AuditQuery("", "", "", null, null, "", null, null);
    }
}
