package org.roundsman.reports.document;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Report;
import org.roundsman.reports.chart.TimelineChart;

/** Every outage: when, for how long, why, whom it met and what was done. */
final class OutagesSection {

    private static final int MOST = 20;

    private final Ink ink;
    private final Report report;

    private OutagesSection(Ink ink) {
        this.ink = ink;
        this.report = ink.report();
    }

    static Section of(Ink ink) {
        return new OutagesSection(ink).section();
    }

    private Section section() {
        Section.Draft draft = ink.section("outages");
        if (report.outages().isEmpty()) {
            boolean observed = report.whole().share().isPresent();
            return draft.say(observed ? "outages.none" : "outages.unknown").done();
        }
        draft.say(
                "outages.intro",
                "count",
                report.outages().size(),
                "silence",
                ink.formats().time(sum(report.outages(), Outage::silence)));
        double minutes = report.outages().stream()
                .mapToDouble(outage -> outage.personMinutes().orElse(0))
                .sum();
        if (minutes > 0) {
            draft.say("outages.people", "time", ink.formats().time(Duration.ofMinutes(Math.round(minutes))));
        }
        List<Outage> shown = longest();
        draft.picture(TimelineChart.of(report, ink.words())).add(table(shown));
        if (report.outages().size() > shown.size()) {
            List<Outage> rest = new ArrayList<>(report.outages());
            rest.removeAll(shown);
            draft.add(Part.note(ink.say(
                    "outages.rest", "count", rest.size(), "time", ink.formats().time(sum(rest, Outage::length)))));
        }
        return draft.done();
    }

    private static Duration sum(List<Outage> outages, java.util.function.Function<Outage, Duration> of) {
        return outages.stream().map(of).reduce(Duration.ZERO, Duration::plus);
    }

    /** All of them, or the longest, by their begin. */
    private List<Outage> longest() {
        if (report.outages().size() <= MOST) {
            return report.outages();
        }
        List<Outage> longest = report.outages().stream()
                .sorted(Comparator.comparing(Outage::length).reversed())
                .limit(MOST)
                .toList();
        return report.outages().stream().filter(longest::contains).toList();
    }

    private Part table(List<Outage> outages) {
        Grid grid = new Grid(
                        ink.say("section.outages"),
                        ink.say("col.begin"),
                        ink.say("col.length"),
                        ink.say("col.site"),
                        ink.say("col.cause"),
                        ink.say("col.points"),
                        ink.say("col.people"),
                        ink.say("col.done"))
                .numbers(1, 4, 5)
                .moments(0);
        outages.forEach(outage -> grid.row(
                begin(outage),
                length(outage),
                outage.site(),
                cause(outage),
                outage.wholeSite()
                        ? ink.say("points.all", "count", ink.formats().whole(outage.accessPoints()))
                        : ink.formats().whole(outage.accessPoints()),
                outage.people().isPresent()
                        ? ink.say(
                                "people.about",
                                "count",
                                ink.formats().whole(outage.people().getAsInt()))
                        : ink.say("not.known"),
                done(outage)));
        return grid.part();
    }

    private String begin(Outage outage) {
        String moment = ink.formats().moment(outage.from(), outage.zone());
        return outage.begunBefore() ? ink.say("outage.before", "moment", moment) : moment;
    }

    private String length(Outage outage) {
        String time = ink.formats().time(outage.length());
        if (outage.cause() == Outage.Cause.COMES_AND_GOES) {
            return ink.say("evidence.away", "count", outage.times(), "time", time);
        }
        return outage.ongoing() ? ink.say("outage.ongoing", "time", time) : time;
    }

    private String cause(Outage outage) {
        String cause = ink.say("cause." + outage.cause().name());
        return outage.what().isBlank() || outage.what().equals(outage.site())
                ? cause
                : ink.say("joined", "one", cause, "two", outage.what());
    }

    private String done(Outage outage) {
        List<String> parts = new ArrayList<>();
        after(outage, outage.noticed())
                .ifPresent(time ->
                        parts.add(ink.say("done.noticed", "time", ink.formats().time(time))));
        after(outage, outage.taken())
                .ifPresent(time ->
                        parts.add(ink.say("done.taken", "time", ink.formats().time(time))));
        if (outage.replaced()) {
            parts.add(ink.say("done.replaced"));
        }
        return String.join(", ", parts);
    }

    /** Empty also when it was before what this report counts. */
    private static Optional<Duration> after(Outage outage, Optional<Instant> moment) {
        return moment.map(at -> Duration.between(outage.from(), at)).filter(time -> !time.isNegative());
    }
}
