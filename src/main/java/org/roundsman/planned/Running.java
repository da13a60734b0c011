package org.roundsman.planned;

import java.time.Instant;

/**
 * Planned work that is going on, or comes next.
 *
 * @param windowId of the window that it belongs to
 * @param reach of the window, which may be more than what was asked about
 * @param where in words
 * @param to when it ends, as things stand
 */
public record Running(long windowId, String title, Reach reach, String where, Instant from, Instant to) {

    static Running of(PlannedWindow window, Stretch stretch) {
        return new Running(
                window.id(),
                window.title(),
                window.target().reach(),
                window.target().words(),
                stretch.from(),
                stretch.to());
    }
}
