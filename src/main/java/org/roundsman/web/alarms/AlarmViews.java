package org.roundsman.web.alarms;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.AlarmChange;
import org.roundsman.alarms.Episode;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.fleet.CustomerScope;

/** Asks for what the page of an alarm shows. */
@ApplicationScoped
class AlarmViews {

    private static final int MOST_PAST = 100;
    private static final int MOST_EPISODES = 50;

    private final AlarmBook book;
    private final Clock clock;

    AlarmViews(AlarmBook book, Clock clock) {
        this.book = book;
        this.clock = clock;
    }

    /** Empty when there is no such alarm in the scope. */
    Optional<AlarmView> view(CustomerScope scope, long alarmId) {
        return book.find(scope, alarmId).map(alarm -> view(scope, alarm));
    }

    private AlarmView view(CustomerScope scope, OpenAlarm alarm) {
        Instant now = clock.instant();
        ZoneId zone = alarm.zone();
        List<AlarmChange> changes = book.changes(scope, alarm.id());
        List<AlarmAct> acts = book.acts(scope, alarm.id());
        List<Episode> episodes = book.episodes(scope, alarm.id());
        AlarmLine cause = alarm.causedBy().isEmpty()
                ? null
                : book.find(scope, alarm.causedBy().getAsLong())
                        .map(one -> AlarmLine.of(one, now))
                        .orElse(null);
        return new AlarmView(
                alarm,
                episodes.get(0),
                episodes.stream()
                        .limit(MOST_EPISODES)
                        .map(episode -> EpisodeLine.of(episode, zone, now))
                        .toList(),
                PastLine.of(changes, acts, zone, MOST_PAST),
                changes.size() + acts.size() > MOST_PAST || episodes.size() > MOST_EPISODES,
                cause,
                book.explainedBy(scope, alarm.id()).stream()
                        .map(one -> AlarmLine.of(one, now))
                        .toList(),
                now);
    }
}
