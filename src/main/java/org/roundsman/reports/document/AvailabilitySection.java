package org.roundsman.reports.document;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.roundsman.reports.Report;
import org.roundsman.reports.SiteFigures;
import org.roundsman.reports.Watch;
import org.roundsman.reports.chart.CalendarChart;
import org.roundsman.reports.chart.Picture;

/** For how much of the time the Wi-Fi was there, by site and by day. */
final class AvailabilitySection {

    private static final int MOST = 25;

    private final Ink ink;
    private final Report report;
    private final Section.Draft draft;

    private AvailabilitySection(Ink ink) {
        this.ink = ink;
        this.report = ink.report();
        this.draft = ink.section("availability");
    }

    static Section of(Ink ink) {
        AvailabilitySection section = new AvailabilitySection(ink);
        section.figures();
        section.sites();
        section.calendar();
        return section.draft.done();
    }

    private void figures() {
        Watch whole = report.whole();
        if (whole.share().isEmpty()) {
            draft.say("availability.nothing");
        } else {
            draft.say("availability.figure", "share", ink.share(whole.share()));
        }
        if (report.service().share().isPresent() && !report.service().equals(whole)) {
            draft.say(
                    "availability.service", "share", ink.share(report.service().share()));
        }
        if (whole.unwatched().isZero() && whole.coverage().isPresent()) {
            draft.say("availability.covered");
        } else if (whole.coverage().isPresent()) {
            draft.say("availability.coverage", "coverage", ink.share(whole.coverage()));
        }
        if (!whole.refusing().isZero()) {
            draft.say("availability.refusing", "time", ink.formats().time(whole.refusing()));
        }
        if (!whole.planned().isZero()) {
            draft.say("availability.planned", "time", ink.formats().time(whole.planned()));
        }
    }

    private void sites() {
        List<SiteFigures> shown = shown();
        Grid grid = new Grid(
                        ink.say("section.availability"),
                        ink.say("col.site"),
                        ink.say("col.around"),
                        ink.say("col.service"),
                        ink.say("col.target"),
                        ink.say("col.met"),
                        ink.say("col.lost"),
                        ink.say("col.coverage"))
                .numbers(1, 2, 3, 5, 6)
                .site(0, ink.onlySite());
        shown.forEach(site -> row(grid, site));
        if (report.sites().size() > 1) {
            grid.row(
                    ink.say("all"),
                    ink.share(report.whole().share()),
                    ink.share(report.service().share()),
                    "",
                    "",
                    "",
                    ink.share(report.whole().coverage()));
        }
        draft.add(grid.part()).more(report.sites().size(), shown.size());
        shown.forEach(site -> site.since()
                .ifPresent(day -> draft.add(Part.note(ink.say(
                        "joined",
                        "one",
                        site.site(),
                        "two",
                        ink.say("availability.since", "day", ink.formats().day(day)))))));
    }

    /** Of many those with the lowest figures, in the order of the report. */
    private List<SiteFigures> shown() {
        if (report.sites().size() <= MOST) {
            return report.sites();
        }
        List<SiteFigures> worst = report.sites().stream()
                .sorted(Comparator.comparingDouble(
                        site -> site.service().share().orElse(2)))
                .limit(MOST)
                .toList();
        return report.sites().stream().filter(worst::contains).toList();
    }

    private void row(Grid grid, SiteFigures site) {
        String met = site.met().map(yes -> yes ? "met.yes" : "met.no").orElse("met.unknown");
        String allowed = ink.formats().time(site.allowed());
        grid.row(
                site.site(),
                ink.share(site.whole().share()),
                ink.share(site.service().share()),
                ink.formats().percent(site.target(), 3),
                ink.say(met),
                ink.say(
                        "lost.allowed",
                        "lost",
                        site.lost().map(ink.formats()::time).orElse(ink.words().notObserved()),
                        "allowed",
                        allowed),
                ink.share(site.whole().coverage()));
    }

    private void calendar() {
        Optional<Picture> picture = CalendarChart.of(report, ink.words());
        if (picture.isEmpty()) {
            draft.say("calendar.none");
            return;
        }
        draft.picture(picture);
        int left = report.sites().size() - CalendarChart.MOST_SITES;
        if (left > 0) {
            draft.add(Part.note(ink.say("calendar.more", "count", left)));
        }
    }
}
