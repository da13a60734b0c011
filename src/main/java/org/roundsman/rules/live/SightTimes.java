package org.roundsman.rules.live;

import java.time.Instant;
import java.util.List;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.PastAlarms;
import org.roundsman.rules.fold.Unseen;

/** When we saw nothing, by the alarms that say so. */
public final class SightTimes {

    private SightTimes() {}

    /** The times without sight that were not over at that moment, with the one that goes on. */
    public static Unseen since(PastAlarms alarms, Instant from) {
        List<Unseen.Time> times = alarms.ofService(AlarmType.VIEW_LOST, from).stream()
                .map(time -> new Unseen.Time(
                        time.began().toEpochMilli(),
                        time.cleared().map(Instant::toEpochMilli).orElse(Long.MAX_VALUE)))
                .toList();
        return times.isEmpty() ? Unseen.NONE : new Unseen(times);
    }
}
