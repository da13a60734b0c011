package org.roundsman.audit;

import java.time.Instant;
import java.util.List;

/**
 * One change, as it is kept.
 *
 * @param action past tense, such as {@code added}, {@code changed}, {@code removed}
 * @param subject what was changed
 * @param changes field by field; empty where the action says all
 */
public record AuditEntry(long id, Instant at, Actor actor, String action, Subject subject, List<FieldChange> changes) {

    public AuditEntry {
        changes = List.copyOf(changes);
    }

    /**
     * What a change is about.
     *
     * @param kind in plain words, such as {@code device}, {@code site}, {@code credentials}
     * @param id null where there is none
     * @param name as it was at the time
     * @param customerId whose data it is, null where it is nobody's in particular
     */
    public record Subject(String kind, Long id, String name, Long customerId) {}

    /**
     * One field.
     *
     * @param old before, empty where there was nothing; never a secret
     * @param fresh after, empty where there is nothing; never a secret
     */
    public record FieldChange(String field, String old, String fresh) {}
}
