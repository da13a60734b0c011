package org.roundsman.reports.document;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Report;
import org.roundsman.reports.chart.TimelineChart;

/** Every outage: when, for how long, why and whom it met; of those that met people most also what was done. */
final class OutagesSection {

    /** Up to so many, all are told in full. */
    private static final int FEW = 12;

    /** Of more, so many are. */
    private static final int TOLD = 10;

    /** So many of the others have a row of their own; without an end a year of many sites would be a book. */
    private static final int BRIEF = 200;

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
        draft.picture(TimelineChart.of(report, ink.words()));
        if (report.outages().size() <= FEW) {
            draft.add(table(ink.say("section.outages"), report.outages(), true).part());
        } else {
            byImpact(draft);
        }
        return draft.done();
    }

    private static Duration sum(List<Outage> outages, java.util.function.Function<Outage, Duration> of) {
        return outages.stream().map(of).reduce(Duration.ZERO, Duration::plus);
    }

    /** Those with the greatest impact in full, the others in brief, each table by their begin. */
    private void byImpact(Section.Draft draft) {
        int all = report.outages().size();
        int listed = Math.min(all, TOLD + BRIEF);
        List<Integer> ranked = IntStream.range(0, all)
                .boxed()
                .sorted(Comparator.comparingDouble(
                        (Integer at) -> -impact(report.outages().get(at))))
                .toList();
        String told = ink.say("table.outages.told", "count", TOLD);
        draft.add(Part.title(told))
                .add(table(told, at(ranked.subList(0, TOLD)), true).part());
        String others = ink.say("table.outages.others", "count", all - TOLD);
        draft.add(Part.title(others))
                .add(table(others, at(ranked.subList(TOLD, listed)), false).compact());
        if (all > listed) {
            List<Outage> rest = at(ranked.subList(listed, all));
            draft.add(Part.note(ink.say(
                    "outages.rest", "count", rest.size(), "time", ink.formats().time(sum(rest, Outage::length)))));
        }
    }

    /** Minutes that people were without, all together; where nobody knows, as if one had been at each silent access point. */
    private static double impact(Outage outage) {
        return outage.personMinutes().orElse(outage.silence().toSeconds() / 60.0);
    }

    /** Those at these places of the report, in its order. */
    private List<Outage> at(List<Integer> places) {
        return places.stream().sorted().map(report.outages()::get).toList();
    }

    /** @param told whether what was done is said as well */
    private Grid table(String title, List<Outage> outages, boolean told) {
        List<String> columns = new ArrayList<>(List.of(
                ink.say("col.begin"),
                ink.say("col.length"),
                ink.say("col.site"),
                ink.say("col.cause"),
                ink.say("col.points"),
                ink.say("col.people")));
        if (told) {
            columns.add(ink.say("col.done"));
        }
        Grid grid = new Grid(title, columns.toArray(String[]::new))
                .numbers(1, 4, 5)
                .moments(0)
                .site(2, ink.onlySite());
        for (Outage outage : outages) {
            List<String> cells = new ArrayList<>(brief(outage));
            if (told) {
                cells.add(done(outage));
            }
            grid.row(cells.toArray(String[]::new));
        }
        return grid;
    }

    private List<String> brief(Outage outage) {
        return List.of(
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
                        : ink.say("not.known"));
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
