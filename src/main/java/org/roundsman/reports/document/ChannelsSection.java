package org.roundsman.reports.document;

import java.time.Duration;
import java.util.List;
import org.roundsman.reports.RadioFigures;
import org.roundsman.reports.Room;
import org.roundsman.reports.chart.RadioChart;

/** How busy the channels were, and which rooms stand out. */
final class ChannelsSection {

    /** The picture shows more of them. */
    private static final int MOST = 5;

    private static final int MOST_ROOMS = 8;

    private ChannelsSection() {}

    static Section of(Ink ink) {
        Section.Draft draft = ink.section("channels");
        List<RadioFigures> radios = RadioChart.worst(ink.report());
        if (radios.isEmpty()) {
            return draft.say("channels.none").done();
        }
        long over = radios.stream()
                .filter(radio -> radio.utilisation().getAsDouble() >= RadioFigures.BUSY)
                .count();
        draft.say("channels.intro");
        draft.say("channels.over", "count", over, "all", radios.size());
        moments(ink, draft);
        draft.picture(RadioChart.of(ink.report(), ink.words()));
        if (radios.size() > RadioChart.MOST) {
            String top = ink.percent(radios.get(RadioChart.MOST).utilisation());
            draft.add(Part.note(ink.say("channels.rest", "count", radios.size() - RadioChart.MOST, "top", top)));
        }
        return draft.add(table(ink, radios))
                .more(radios.size(), Math.min(MOST, radios.size()))
                .done();
    }

    private static void moments(Ink ink, Section.Draft draft) {
        List<RadioFigures> all = ink.report().radios();
        List<Duration> busy = all.stream()
                .map(RadioFigures::busy)
                .filter(time -> !time.isZero())
                .sorted()
                .toList();
        if (!busy.isEmpty()) {
            String most = ink.formats().time(busy.get(busy.size() - 1));
            draft.say("channels.times", "count", busy.size(), "time", most);
        }
        long without =
                all.stream().filter(radio -> radio.utilisation().isEmpty()).count();
        if (without > 0) {
            draft.say("channels.unmeasured", "count", without);
        }
    }

    private static Part table(Ink ink, List<RadioFigures> radios) {
        Grid grid = new Grid(
                        ink.say("section.channels"),
                        ink.say("col.radio"),
                        ink.say("col.place"),
                        ink.say("col.site"),
                        ink.say("col.p95"),
                        ink.say("col.busy"),
                        ink.say("col.clients"),
                        ink.say("col.measured"))
                .numbers(3, 4, 5, 6)
                .site(2, ink.onlySite());
        radios.stream()
                .limit(MOST)
                .forEach(radio -> grid.row(
                        RadioChart.name(radio, ink.words()),
                        radio.place(),
                        radio.site(),
                        ink.percent(radio.utilisation()),
                        ink.formats().time(radio.busy()),
                        ink.number(radio.clients()),
                        radio.expected() == 0
                                ? ink.words().notObserved()
                                : ink.formats().share(Math.min(1, (double) radio.quarters() / radio.expected()))));
        return grid.part();
    }

    static Section rooms(Ink ink) {
        Section.Draft draft = ink.section("rooms");
        List<Room> rooms = ink.report().rooms();
        if (rooms.isEmpty()) {
            return draft.say("rooms.none").done();
        }
        Grid grid = new Grid(
                        ink.say("section.rooms"),
                        ink.say("col.place"),
                        ink.say("col.site"),
                        ink.say("col.device"),
                        ink.say("col.why"),
                        ink.say("col.evidence"))
                .site(1, ink.onlySite());
        rooms.stream()
                .limit(MOST_ROOMS)
                .forEach(room -> grid.row(
                        room.place().isBlank() ? room.device() : room.place(),
                        room.site(),
                        room.device(),
                        ink.say("reason." + room.reason().name()),
                        evidence(ink, room)));
        return draft.say("rooms.intro")
                .add(grid.part())
                .more(rooms.size(), MOST_ROOMS)
                .done();
    }

    private static String evidence(Ink ink, Room room) {
        String time = ink.formats().time(room.time());
        return room.reason() == Room.Reason.BUSY_CHANNEL
                ? ink.say("evidence.busy", "figure", ink.percent(room.figure()), "time", time)
                : ink.say("evidence.away", "count", room.times(), "time", time);
    }
}
