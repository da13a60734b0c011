package org.roundsman.claims;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A unit in store.
 *
 * @param roomId the room where it lies; empty where it lies at a site
 * @param siteId the site where it lies; empty where it lies in a room
 * @param where name of the room or site, with its customer
 * @param zone name of the site's time zone; UTC in a room
 * @param purchase order and day of what was bought with it, in words, or empty
 * @param leftAt when it left; empty while it lies there
 * @param leftWhy and why
 */
public record Spare(
        long id,
        Unit unit,
        OptionalLong roomId,
        OptionalLong siteId,
        String where,
        Instant since,
        String note,
        String purchase,
        Optional<Instant> leftAt,
        String leftWhy,
        String leftBy) {}
