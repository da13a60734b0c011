package org.roundsman.planned;

import java.time.Instant;

/**
 * Planned work that is going on, or comes next.
 *
 * @param windowId of the window that it belongs to
 * @param where in words
 * @param to when it ends, as things stand
 */
public record Running(long windowId, String title, String where, Instant from, Instant to) {

    static Running of(PlannedWindow window, Stretch stretch) {
        return new Running(window.id(), window.title(), window.target().words(), stretch.from(), stretch.to());
    }
}
