package org.roundsman.people;

import java.time.Instant;
import java.util.Optional;

/**
 * An account as its owner sees it; never its password.
 *
 * @param customerId the one customer of a viewer
 * @param lockedUntil present while the account is locked after repeated failures
 */
public record Person(
        long id,
        String name,
        String shownName,
        Role role,
        Optional<Long> customerId,
        boolean mustChange,
        boolean disabled,
        Optional<Instant> lockedUntil) {}
