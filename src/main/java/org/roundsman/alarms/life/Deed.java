package org.roundsman.alarms.life;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.AlarmAct;

/** What somebody wants to do with an alarm. */
public record Deed(AlarmAct.Kind kind, String text, Optional<Instant> until) {

    public static Deed of(AlarmAct.Kind kind, String text) {
        return new Deed(kind, text.strip(), Optional.empty());
    }

    public static Deed shelve(Instant until, String reason) {
        return new Deed(AlarmAct.Kind.SHELVE, reason.strip(), Optional.of(until));
    }
}
