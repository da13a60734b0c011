package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.alarms.life.AlarmCourse;
import org.roundsman.alarms.life.Step;

/** Folds signals into alarms, in the transaction of one connection: one read and few writes for any number of them. */
public final class Intake {

    private final Connection connection;
    private final Set<EpisodeDraft> touched = new LinkedHashSet<>();
    private final List<Change> changes = new ArrayList<>();
    private final List<Change> reopened = new ArrayList<>();

    private Intake(Connection connection) {
        this.connection = connection;
    }

    private record Change(EpisodeDraft episode, Instant at, Optional<Severity> severity, String text) {}

    /** Takes signals in their order; gives the ids of alarms that changed in any way. */
    public static Set<Long> take(Connection connection, List<Signal> signals) throws SQLException {
        return signals.isEmpty() ? Set.of() : new Intake(connection).fold(signals);
    }

    /** Clears the active alarms of devices and sites that were removed; gives the ids. */
    public static Set<Long> clearOrphans(Connection connection, Instant now) throws SQLException {
        List<Signal> clears = new ArrayList<>();
        for (AlarmKey key : HeldRows.orphans(connection)) {
            String what = key.resource().kind() == Resource.Kind.SITE ? "site" : "device";
            clears.add(new Signal.Clear(key, now, "The " + what + " was removed from Roundsman."));
        }
        return take(connection, clears);
    }

    private Set<Long> fold(List<Signal> signals) throws SQLException {
        Map<AlarmKey, Held> held =
                HeldRows.of(connection, signals.stream().map(Signal::key).toList());
        Map<Resource, Whereabouts> fleet = Whereabouts.of(connection, starting(held, signals));
        for (Signal signal : signals) {
            take(held.get(signal.key()), signal, fleet);
        }
        EpisodeRows.write(connection, touched);
        writeChanges();
        Set<Long> ids = new LinkedHashSet<>();
        touched.forEach(episode -> ids.add(episode.alarm().alarmId()));
        return ids;
    }

    /** Keys of which an episode may begin: the fleet has to be asked whose they are. */
    private static Set<AlarmKey> starting(Map<AlarmKey, Held> held, List<Signal> signals) {
        Map<AlarmKey, Integer> seen = new LinkedHashMap<>();
        signals.forEach(signal -> seen.merge(signal.key(), 1, Integer::sum));
        Set<AlarmKey> keys = new LinkedHashSet<>();
        for (Signal signal : signals) {
            boolean steady = seen.get(signal.key()) == 1
                    && held.get(signal.key()).state().filter(s -> s.active()).isPresent();
            if (signal instanceof Signal.Raise && !steady) {
                keys.add(signal.key());
            }
        }
        return keys;
    }

    private void take(Held alarm, Signal signal, Map<Resource, Whereabouts> fleet) {
        Step step = AlarmCourse.after(alarm.state(), signal);
        if (step.kind() == Step.Kind.NOTHING) {
            return;
        }
        EpisodeDraft episode;
        if (step.kind() == Step.Kind.BEGAN) {
            Whereabouts at = fleet.get(whole(signal.key().resource()));
            if (at == null) {
                return; // it was removed while the signal was on its way
            }
            episode = alarm.begin(step.state().orElseThrow(), at);
        } else {
            episode = alarm.episode().orElseThrow();
            episode.state(step.state().orElseThrow());
        }
        touched.add(episode);
        note(step, episode, signal);
    }

    private void note(Step step, EpisodeDraft episode, Signal signal) {
        Instant at = episode.state().changed();
        if (step.statusChange()) {
            changes.add(new Change(episode, at, step.changedTo(), signal.text()));
        }
        if (step.reopened()) {
            reopened.add(new Change(episode, at, Optional.empty(), "Worse than when it was closed."));
        }
    }

    private static Resource whole(Resource resource) {
        return new Resource(resource.kind(), resource.id(), "");
    }

    private void writeChanges() throws SQLException {
        Sql.batch(
                connection,
                "insert into alarm_change (alarm_id, episode_id, at, severity, text) values (?, ?, ?, ?, ?)",
                changes.stream()
                        .map(change -> new Sql.Row(
                                change.episode().alarm().alarmId(),
                                change.episode().id(),
                                change.at(),
                                change.severity().map(Severity::code).orElse(Severity.CLEARED_CODE),
                                change.text()))
                        .toList());
        ActRows.add(
                connection,
                reopened.stream()
                        .map(change -> ActRows.itself(
                                change.episode().alarm().alarmId(),
                                change.episode().id(),
                                change.at(),
                                AlarmAct.Kind.REOPEN,
                                change.text()))
                        .toList());
    }
}
