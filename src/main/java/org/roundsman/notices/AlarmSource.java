package org.roundsman.notices;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.OpenAlarm;

/** Where notices hear of alarms. */
interface AlarmSource {

    /** Status changes after that one, in the order of their ids. */
    List<StatusChange> changesAfter(long changeId, int most);

    /** Every active alarm. */
    Collection<OpenAlarm> active();

    /** The alarm as it was in that episode. */
    Optional<OpenAlarm> episode(long episodeId);

    /** Alarms that cleared since then. */
    List<OpenAlarm> clearedSince(Instant since);
}
