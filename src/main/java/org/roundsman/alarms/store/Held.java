package org.roundsman.alarms.store;

import java.util.Optional;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.life.AlarmState;

/** An alarm while signals are folded into it: what the database has, and what is to be written. Of one thread. */
final class Held {

    private final AlarmKey key;
    private Optional<Stored> stored = Optional.empty();
    private Optional<EpisodeDraft> episode = Optional.empty();
    private long alarmId;

    Held(AlarmKey key) {
        this.key = key;
    }

    /** The episode as the database has it. */
    record Stored(long episodeId, AlarmState state) {}

    /** As the database has it. */
    void found(long id, long episodeId, AlarmState state) {
        alarmId = id;
        stored = Optional.of(new Stored(episodeId, state));
        episode = Optional.of(new EpisodeDraft(this, episodeId, state));
    }

    AlarmKey key() {
        return key;
    }

    /** 0 until it has one. */
    long alarmId() {
        return alarmId;
    }

    void alarmId(long id) {
        alarmId = id;
    }

    boolean known() {
        return stored.isPresent();
    }

    Optional<EpisodeDraft> episode() {
        return episode;
    }

    Optional<AlarmState> state() {
        return episode.map(EpisodeDraft::state);
    }

    EpisodeDraft begin(AlarmState state, Whereabouts at) {
        EpisodeDraft begun = new EpisodeDraft(this, state, at);
        episode = Optional.of(begun);
        return begun;
    }
}
