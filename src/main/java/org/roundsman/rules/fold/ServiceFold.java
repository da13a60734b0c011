package org.roundsman.rules.fold;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;

/** The rules about the service itself. Used by one thread. */
public final class ServiceFold {

    private final Standings standings = new Standings(0);
    private Tuning tuning;

    public ServiceFold(Tuning tuning) {
        this.tuning = tuning;
    }

    /** What those who keep alarms know of one. */
    public void tell(AlarmKey key, Instant changed, Optional<Severity> severity, Instant began) {
        standings.tell(key, changed.toEpochMilli(), severity, began.toEpochMilli());
        standings.settle();
    }

    /** Other values from now on. */
    public void retune(Tuning fresh, Instant now, List<Signal> out) {
        tuning = fresh;
        standings.drop(slot -> fresh.ladder(slot.type()) == null, now, "The rule is switched off.", out);
    }

    /**
     * Takes the service's own figures.
     *
     * @param next when they are taken again
     */
    public void take(Map<AlarmType, Double> figures, Instant at, Duration next, List<Signal> out) {
        figures.forEach((type, figure) -> {
            Ladder ladder = tuning.ladder(type);
            if (ladder != null) {
                standings.take(
                        new Standings.Look(Slot.device(type), ladder, ""),
                        new Levels.Sample(at.toEpochMilli(), figure, next.toMillis()),
                        LevelState.NONE,
                        out);
            }
        });
    }
}
