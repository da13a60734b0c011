package org.roundsman.reports.document;

import java.util.List;
import java.util.function.Function;
import org.roundsman.alarms.Severity;
import org.roundsman.reports.Handling;
import org.roundsman.reports.WorkDone;

/** What we had to deal with, and what we did. */
final class DealingsSections {

    private static final int MOST = 12;

    private DealingsSections() {}

    static Section handling(Ink ink) {
        Handling handling = ink.report().handling();
        Section.Draft draft = ink.section("handling");
        if (handling.alarms() == 0) {
            draft.say("handling.none");
        } else {
            draft.say("handling.intro", "count", handling.alarms(), "explained", handling.explained());
            draft.say(
                    "handling.taken",
                    "taken",
                    ink.formats().whole(handling.taken()),
                    "all",
                    ink.formats().whole(handling.alarms()),
                    "cleared",
                    ink.formats().whole(handling.cleared()));
        }
        if (handling.planned() > 0) {
            draft.say("handling.planned", "count", handling.planned());
        }
        if (handling.alarms() > 0) {
            draft.title("table.severities").add(severities(ink, handling));
            draft.title("table.times").add(times(ink, handling));
        }
        return draft.done();
    }

    private static Part severities(Ink ink, Handling handling) {
        Grid grid = new Grid(ink.say("table.severities"), ink.say("col.severity"), ink.say("col.count")).numbers(1);
        List<Severity> ascending = List.of(Severity.values());
        for (int i = ascending.size() - 1; i >= 0; i--) {
            String name = ascending.get(i).name();
            Integer count = handling.severities().get(name);
            if (count != null) {
                grid.row(ink.say("severity." + name), ink.formats().whole(count));
            }
        }
        return grid.part();
    }

    private static Part times(Ink ink, Handling handling) {
        return new Grid(ink.say("table.times"), ink.say("col.what"), ink.say("col.time"))
                .numbers(1)
                .row(ink.say("times.take"), ink.time(handling.toTake()))
                .row(ink.say("times.clear"), ink.time(handling.toClear()))
                .row(ink.say("times.longest"), ink.time(handling.longest()))
                .part();
    }

    static Section work(Ink ink) {
        WorkDone work = ink.report().work();
        Section.Draft draft = ink.section("work");
        if (work.planned().isEmpty()
                && work.replaced().isEmpty()
                && work.upgraded().isEmpty()) {
            return draft.say("work.none").done();
        }
        draft.say("work.intro");
        planned(ink, draft, work.planned());
        listed(draft, "table.replaced", changes(ink, "table.replaced"), work.replaced(), one -> new String[] {
            ink.formats().moment(one.at(), one.zone()),
            one.site(),
            one.device(),
            ink.known(one.oldSerial()),
            ink.known(one.newSerial())
        });
        listed(draft, "table.upgraded", changes(ink, "table.upgraded"), work.upgraded(), one -> new String[] {
            ink.formats().moment(one.at(), one.zone()),
            one.site(),
            one.device(),
            ink.known(one.old()),
            ink.known(one.fresh())
        });
        return draft.done();
    }

    private static void planned(Ink ink, Section.Draft draft, List<WorkDone.PlannedWork> all) {
        Grid grid = new Grid(
                        ink.say("table.planned"),
                        ink.say("col.begin"),
                        ink.say("col.end"),
                        ink.say("col.site"),
                        ink.say("col.what"))
                .site(2, ink.onlySite());
        listed(draft, "table.planned", grid, all, one -> new String[] {
            ink.formats().moment(one.from(), one.zone()),
            ink.formats().moment(one.to(), one.zone()),
            one.site(),
            one.device().isBlank() ? one.title() : ink.say("joined", "one", one.device(), "two", one.title())
        });
    }

    private static Grid changes(Ink ink, String title) {
        return new Grid(
                        ink.say(title),
                        ink.say("col.when"),
                        ink.say("col.site"),
                        ink.say("col.unit"),
                        ink.say("col.old"),
                        ink.say("col.new"))
                .site(1, ink.onlySite());
    }

    /** A table with its title; nothing where there are no rows. */
    private static <T> void listed(
            Section.Draft draft, String title, Grid grid, List<T> all, Function<T, String[]> cells) {
        if (all.isEmpty()) {
            return;
        }
        all.stream().limit(MOST).map(cells).forEach(grid::row);
        draft.title(title).add(grid.part()).more(all.size(), MOST);
    }
}
