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
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.FleetBoard;
import org.roundsman.readings.Ribbon;
import org.roundsman.readings.SiteRow;
import org.roundsman.web.chart.RibbonPicture;

/** Asks for everything about one alarm. */
@ApplicationScoped
class AlarmPanels {

    private static final int HISTORY = 20;

    private final AlarmBook book;
    private final Before before;
    private final FleetBoard fleet;
    private final Devices devices;
    private final Clock clock;

    AlarmPanels(AlarmBook book, Before before, FleetBoard fleet, Devices devices, Clock clock) {
        this.book = book;
        this.before = before;
        this.fleet = fleet;
        this.devices = devices;
        this.clock = clock;
    }

    /** Empty when there is no such alarm in the reader's scope. */
    Optional<AlarmPanel> panel(Reader reader, long id) {
        return book.find(reader.scope(), id).map(alarm -> panel(reader, alarm));
    }

    private AlarmPanel panel(Reader reader, OpenAlarm alarm) {
        Instant now = clock.instant();
        List<OpenAlarm> explained = book.explainedBy(reader.scope(), alarm.id());
        Optional<Day> day = day(reader, alarm);
        return new AlarmPanel(
                TriageLine.of(alarm, reader, now, "", true),
                seen(reader, alarm),
                alarm.key().type().advice(),
                alarm.evidence(),
                explained.stream().map(one -> explained(one, now)).toList(),
                alarm.causedBy().orElse(0),
                before.of(reader.scope(), alarm, explained),
                reader.inside() ? history(reader, alarm) : List.of(),
                day.map(one -> picture(one, alarm)).orElse(""),
                day.map(Day::of).orElse(""),
                "",
                next(reader, alarm));
    }

    private AlarmPanel.Next next(Reader reader, OpenAlarm alarm) {
        Optional<Device> asked = reader.inside() ? toAsk(reader, alarm) : Optional.empty();
        return new AlarmPanel.Next(
                reader.acts() && alarm.active(),
                alarm.operator() == OperatorState.SHELVED,
                reader.inside() && alarm.siteId().isPresent(),
                asked.map(device -> device.id).orElse(0L),
                asked.map(device -> device.name).orElse(""));
    }

    /** The device itself; of a whole site its gateway, which comes before everything else. */
    private Optional<Device> toAsk(Reader reader, OpenAlarm alarm) {
        Resource resource = alarm.key().resource();
        return switch (resource.kind()) {
            case DEVICE -> devices.find(reader.scope(), resource.id());
            case SITE -> devices.ofSite(reader.scope(), resource.id()).stream()
                    .filter(device -> device.kind == DeviceKind.GATEWAY)
                    .findFirst();
            case SERVICE -> Optional.empty();
        };
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
                AlarmWords.moment(alarm.began(), AlarmWords.zone(alarm), now));
    }

    private List<HistoryLine> history(Reader reader, OpenAlarm alarm) {
        return HistoryLine.of(
                book.changes(reader.scope(), alarm.id()),
                book.acts(reader.scope(), alarm.id()),
                AlarmWords.zone(alarm),
                HISTORY);
    }

    private record Day(String of, Ribbon ribbon) {}

    /** Of the device, or of the whole site where the whole site is concerned. */
    private Optional<Day> day(Reader reader, OpenAlarm alarm) {
        Resource resource = alarm.key().resource();
        return switch (resource.kind()) {
            case DEVICE -> fleet.device(reader.scope(), resource.id()).map(AlarmPanels::day);
            case SITE -> fleet.site(reader.scope(), resource.id()).map(AlarmPanels::day);
            case SERVICE -> Optional.empty();
        };
    }

    private static Day day(DeviceRow row) {
        return new Day(row.name(), row.ribbon());
    }

    private static Day day(SiteRow row) {
        return new Day(row.site(), row.ribbon());
    }

    private static String picture(Day day, OpenAlarm alarm) {
        return RibbonPicture.of(day.ribbon(), "day", day.of(), AlarmWords.zone(alarm))
                .toString();
    }
}
