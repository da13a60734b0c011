package org.roundsman.alarms.store;

import java.util.Optional;
import org.roundsman.alarms.life.AlarmState;

/** An episode that is to be added or changed. Of one thread. */
final class EpisodeDraft {

    private final Held alarm;
    private final Optional<Whereabouts> fresh;
    private long id;
    private AlarmState state;

    /** One that the database has. */
    EpisodeDraft(Held alarm, long id, AlarmState state) {
        this.alarm = alarm;
        this.id = id;
        this.state = state;
        this.fresh = Optional.empty();
    }

    /** A new one. */
    EpisodeDraft(Held alarm, AlarmState state, Whereabouts at) {
        this.alarm = alarm;
        this.state = state;
        this.fresh = Optional.of(at);
    }

    Held alarm() {
        return alarm;
    }

    /** Where the resource is; empty for an episode that the database has. */
    Optional<Whereabouts> fresh() {
        return fresh;
    }

    long id() {
        return id;
    }

    void id(long given) {
        id = given;
    }

    AlarmState state() {
        return state;
    }

    void state(AlarmState next) {
        state = next;
    }
}
