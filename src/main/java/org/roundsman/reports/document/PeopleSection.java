package org.roundsman.reports.document;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.roundsman.reports.Crowd;
import org.roundsman.reports.Report;
import org.roundsman.reports.SiteFigures;
import org.roundsman.reports.chart.WeekChart;

/** How many devices were connected, and when. */
final class PeopleSection {

    private static final int MOST = 15;

    private PeopleSection() {}

    static Section of(Ink ink) {
        Report report = ink.report();
        Section.Draft draft = ink.section("people");
        Optional<Crowd.Split> clients = report.crowd().clients();
        if (clients.isEmpty()) {
            return draft.say("people.none").done();
        }
        draft.say(
                "people.intro",
                "all",
                ink.formats().number(clients.get().all()),
                "staff",
                ink.formats().number(clients.get().staff()),
                "guest",
                ink.formats().number(clients.get().guest()),
                "other",
                ink.formats().number(clients.get().other()));
        if (report.crowd().observed() < 1) {
            draft.say(
                    "people.observed",
                    "share",
                    ink.formats().share(report.crowd().observed()));
        }
        draft.picture(WeekChart.of(report, ink.words()));
        draft.add(table(ink));
        return draft.more(report.sites().size(), MOST).done();
    }

    private static Part table(Ink ink) {
        String kind = ink.report().subject().month().isPresent() ? "month" : "days";
        Grid grid = new Grid(
                        ink.say("section.people"),
                        ink.say("col.site"),
                        ink.say("col.average"),
                        ink.say("col.staff"),
                        ink.say("col.guest"),
                        ink.say("col.other"),
                        ink.say("col.busiest"),
                        ink.say("col.in.it"),
                        ink.say("col.month.before", "kind", kind),
                        ink.say("col.year.before"))
                .numbers(1, 2, 3, 4, 6, 7, 8)
                .site(0, ink.onlySite());
        ink.report().sites().stream().limit(MOST).forEach(site -> row(ink, grid, site));
        if (ink.report().sites().size() > 1) {
            row(ink, grid, ink.say("all"), ink.report().crowd());
        }
        return grid.part();
    }

    private static void row(Ink ink, Grid grid, SiteFigures site) {
        row(ink, grid, site.site(), site.crowd());
    }

    private static void row(Ink ink, Grid grid, String name, Crowd crowd) {
        grid.row(
                name,
                figure(ink, crowd, Crowd.Split::all),
                figure(ink, crowd, Crowd.Split::staff),
                figure(ink, crowd, Crowd.Split::guest),
                figure(ink, crowd, Crowd.Split::other),
                crowd.busiest()
                        .map(hour -> ink.formats().moment(hour.at(), hour.zone()))
                        .orElse(ink.words().notObserved()),
                crowd.busiest()
                        .map(hour -> ink.formats().number(hour.clients().all()))
                        .orElse(""),
                ink.number(crowd.monthBefore().clients()),
                ink.number(crowd.yearBefore().clients()));
    }

    private static String figure(Ink ink, Crowd crowd, ToDoubleFunction<Crowd.Split> of) {
        return crowd.clients()
                .map(split -> ink.formats().number(of.applyAsDouble(split)))
                .orElse(ink.words().notObserved());
    }
}
