package org.roundsman.alarms.life;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.OperatorState;

/**
 * What people have made of an alarm.
 *
 * @param by who set the state, or empty
 * @param until end of the shelf; present exactly while shelved
 * @param reason of the shelf, or the note of the state
 * @param takenBy who has it, or empty
 */
public record Handling(OperatorState state, String by, Optional<Instant> until, String reason, String takenBy) {

    /** Nobody has done anything yet. */
    public static final Handling NONE = new Handling(OperatorState.NONE, "", Optional.empty(), "", "");

    public Handling {
        if (until.isPresent() != (state == OperatorState.SHELVED)) {
            throw new IllegalArgumentException(state + " until " + until);
        }
    }

    Handling with(OperatorState next, String who, String note) {
        return new Handling(next, who, Optional.empty(), note, takenBy);
    }

    Handling takenBy(String who) {
        return new Handling(state, by, until, reason, who);
    }
}
