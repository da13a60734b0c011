package org.roundsman.notices;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.fleet.CustomerScope;

/** Alarms as the alarm book has them. */
@ApplicationScoped
class BookedAlarms implements AlarmSource {

    private final AlarmBook book;

    BookedAlarms(AlarmBook book) {
        this.book = book;
    }

    @Override
    public List<StatusChange> changesAfter(long changeId, int most) {
        return book.changesAfter(changeId, most).stream()
                .map(c -> new StatusChange(c.id(), c.alarmId(), c.episodeId(), c.at(), c.severity()))
                .toList();
    }

    @Override
    public Collection<OpenAlarm> active() {
        return book.active().values();
    }

    @Override
    public Optional<OpenAlarm> episode(long episodeId) {
        return book.episode(episodeId);
    }

    @Override
    public List<OpenAlarm> clearedSince(Instant since) {
        return book.recentlyCleared(CustomerScope.everyone(), since);
    }
}
