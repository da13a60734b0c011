package org.roundsman.alarms;

import java.time.Instant;
import java.util.Optional;

/**
 * One thing that somebody did with an alarm (RFC 8632: operator-state-change).
 *
 * @param by sign-in name, or {@code roundsman} where the service did it
 * @param text note or reason, or empty
 * @param until end of the shelf, for {@link Kind#SHELVE}
 */
public record AlarmAct(
        long id, long alarmId, long episodeId, Instant at, String by, Kind kind, String text, Optional<Instant> until) {

    /** What can be done; the name is what tables store. */
    public enum Kind {
        ACK("acknowledged"),
        TAKE("took it"),
        RELEASE("gave it back"),
        NOTE("noted"),
        SHELVE("shelved"),
        UNSHELVE("took off the shelf"),
        CLOSE("closed"),
        /** By the service: a closed alarm became worse than it had been. */
        REOPEN("opened again");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** Past tense, for the history and the audit. */
        public String word() {
            return word;
        }
    }
}
