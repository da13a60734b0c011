package org.roundsman.notices;

import java.time.Instant;
import java.util.Optional;

/**
 * A message of the outbox, as people see it.
 *
 * @param kind raise, update, escalation, clear, summary, digest or test
 * @param channel {@code mail}, or {@code webhook} with its name
 * @param failure how the last attempt ended, or empty
 */
public record OutboxLine(
        long id,
        String person,
        String kind,
        String channel,
        String subject,
        OutboxState state,
        Instant createdAt,
        Instant dueAt,
        int attempts,
        Optional<Instant> sentAt,
        String failure) {}
