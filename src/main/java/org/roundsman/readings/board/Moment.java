package org.roundsman.readings.board;

import java.time.Instant;
import java.time.OffsetDateTime;
import org.roundsman.readings.spans.Touched;
import org.roundsman.readings.sql.Sql;

/**
 * When a question is asked, and what is known at that time.
 *
 * @param now the present moment
 * @param behind whether storing is behind, so that a missing round says nothing about the device
 */
public record Moment(Instant now, boolean behind) {

    OffsetDateTime at() {
        return Sql.time(now);
    }

    /** A device whose next round should have come long before that is unwatched. */
    OffsetDateTime watchedSince() {
        return behind ? OffsetDateTime.MIN : at();
    }

    /** Start of the quarter hour that goes on. */
    Instant quarter() {
        return Instant.ofEpochMilli(Touched.quarter(now.toEpochMilli()));
    }
}
