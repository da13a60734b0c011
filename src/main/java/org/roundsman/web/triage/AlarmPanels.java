package org.roundsman.web.triage;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.Episode;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.fleet.Device;

/** Asks for everything about one alarm. */
@ApplicationScoped
class AlarmPanels {

    private static final int HISTORY = 20;

    private final AlarmBook book;
    private final Before before;
    private final Surroundings around;
    private final Clock clock;

    AlarmPanels(AlarmBook book, Before before, Surroundings around, Clock clock) {
        this.book = book;
        this.before = before;
        this.around = around;
        this.clock = clock;
    }

    /** Empty when there is no such alarm in the reader's scope. */
    Optional<AlarmPanel> panel(Reader reader, long id) {
        return book.find(reader.scope(), id).map(alarm -> panel(reader, alarm));
    }

    private AlarmPanel panel(Reader reader, OpenAlarm alarm) {
        Instant now = clock.instant();
        List<OpenAlarm> explained = book.explainedBy(reader.scope(), alarm.id());
        Optional<Surroundings.Day> day = around.day(reader.scope(), alarm);
        return new AlarmPanel(
                TriageLine.of(alarm, reader, now, "", true),
                seen(reader, alarm),
                AlarmWords.clock(alarm),
                alarm.advice(),
                alarm.evidence(),
                explained.stream().map(one -> explained(one, now)).toList(),
                alarm.causedBy().orElse(0),
                before.of(reader.scope(), alarm, explained),
                reader.inside() ? history(reader, alarm) : List.of(),
                day.map(Surroundings.Day::picture).orElse(""),
                day.map(Surroundings.Day::of).orElse(""),
                alarm.active() ? around.month(alarm, now) : "",
                next(reader, alarm));
    }

    private AlarmPanel.Next next(Reader reader, OpenAlarm alarm) {
        Optional<Device> asked = reader.inside() ? around.toAsk(reader.scope(), alarm) : Optional.empty();
        return new AlarmPanel.Next(
                reader.acts() && alarm.active(),
                alarm.operator() == OperatorState.SHELVED,
                reader.inside() && alarm.siteId().isPresent(),
                asked.map(device -> device.id).orElse(0L),
                asked.map(device -> device.name).orElse(""));
    }

    /** While it lasts, what is seen; afterwards what was said at its end. */
    private String seen(Reader reader, OpenAlarm alarm) {
        if (alarm.active()) {
            return alarm.text();
        }
        return book.episodes(reader.scope(), alarm.id()).stream()
                .filter(episode -> episode.id() == alarm.episodeId())
                .map(Episode::summary)
                .filter(summary -> !summary.isEmpty())
                .findFirst()
                .orElse(alarm.text());
    }

    private static AlarmPanel.Explained explained(OpenAlarm alarm, Instant now) {
        return new AlarmPanel.Explained(
                alarm.id(),
                alarm.active() ? alarm.severity().word() : "cleared",
                alarm.key().type().title(),
                AlarmWords.resource(alarm),
                AlarmWords.moment(alarm.began(), alarm, now));
    }

    private List<HistoryLine> history(Reader reader, OpenAlarm alarm) {
        return HistoryLine.of(
                book.changes(reader.scope(), alarm.id()), book.acts(reader.scope(), alarm.id()), alarm.zone(), HISTORY);
    }
}
