package org.roundsman.alarms;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Which episodes to look for. Empty leaves a matter open.
 *
 * @param words all must occur in text, names or type, each by its beginning, without regard to case
 * @param severity whose worst severity was at least this
 * @param from active at this moment or later
 * @param to raised before this moment
 * @param number page, from 1; beyond the end the last page comes
 * @param size at most so many on a page, from 1 to 500
 */
public record AlarmSearch(
        String words,
        OptionalLong customerId,
        OptionalLong siteId,
        OptionalLong deviceId,
        Optional<AlarmType> type,
        Optional<Severity> severity,
        Optional<Instant> from,
        Optional<Instant> to,
        State state,
        int number,
        int size) {

    /** In which state an episode is. */
    public enum State {
        ANY,
        /** Not cleared. */
        ACTIVE,
        /** Over. */
        CLEARED,
        /** Active and acknowledged, or taken by somebody. */
        ACKNOWLEDGED,
        /** Active, and nobody has done anything with it. */
        UNTOUCHED,
        SHELVED,
        CLOSED
    }

    public AlarmSearch {
        if (number < 1 || size < 1 || size > 500) {
            throw new IllegalArgumentException("page " + number + " of size " + size);
        }
    }

    /** Everything, the first page of so many. */
    public static AlarmSearch everything(int size) {
        return new AlarmSearch(
                "",
                OptionalLong.empty(),
                OptionalLong.empty(),
                OptionalLong.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                State.ANY,
                1,
                size);
    }
}
