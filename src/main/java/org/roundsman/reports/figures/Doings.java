package org.roundsman.reports.figures;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.roundsman.firmware.FirmwareChange;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Stretch;
import org.roundsman.planned.Target;
import org.roundsman.reports.ReportSubject;
import org.roundsman.reports.WorkDone;
import org.roundsman.reports.WorkDone.PlannedWork;
import org.roundsman.reports.WorkDone.Replaced;
import org.roundsman.reports.WorkDone.Upgraded;

/** Tells what we did in a stretch. */
public final class Doings {

    private static final Comparator<PlannedWork> BY_TIME = Comparator.comparing(PlannedWork::from)
            .thenComparing(PlannedWork::site, String.CASE_INSENSITIVE_ORDER)
            .thenComparing(PlannedWork::device, String.CASE_INSENSITIVE_ORDER)
            .thenComparing(PlannedWork::title);

    private final Bounds bounds;

    public Doings(ReportSubject subject, Instant asOf) {
        this.bounds = new Bounds(subject, asOf);
    }

    public WorkDone of(List<SitePeriod> sites, PastEvents events) {
        return new WorkDone(
                sites.stream()
                        .flatMap(site -> events.windows().stream().flatMap(window -> planned(site, window)))
                        .sorted(BY_TIME)
                        .toList(),
                events.replaced().stream()
                        .filter(unit -> bounds.covers(unit.at(), unit.zone()))
                        .map(unit -> new Replaced(
                                unit.site(), unit.device(), unit.oldSerial(), unit.newSerial(), unit.zone(), unit.at()))
                        .toList(),
                events.changes().stream()
                        .filter(change ->
                                bounds.covers(change.at(), change.place().zone()))
                        .map(Doings::upgraded)
                        .toList());
    }

    /** What of a window took place at a site and touched the stretch: not cut to it, but nothing after the report. */
    private Stream<PlannedWork> planned(SitePeriod site, PlannedWindow window) {
        ZoneId zone = site.zone();
        if (!reaches(window.target(), site) || !site.from().isBefore(site.to())) {
            return Stream.empty();
        }
        return window.stretches(zone, site.from(), site.to()).stream()
                .flatMap(one -> one.within(Instant.MIN, bounds.asOf()).stream())
                .map(one -> work(site, window, one));
    }

    private boolean reaches(Target target, SitePeriod site) {
        return target.reach() == Reach.DEVICE
                ? target.siteId().equals(OptionalLong.of(site.siteId()))
                : target.reaches(bounds.subject().customerId(), site.siteId(), OptionalLong.empty());
    }

    private static PlannedWork work(SitePeriod site, PlannedWindow window, Stretch when) {
        String device =
                window.target().reach() == Reach.DEVICE ? window.target().device() : "";
        return new PlannedWork(site.site(), device, window.title(), site.zone(), when.from(), when.to());
    }

    private static Upgraded upgraded(FirmwareChange change) {
        return new Upgraded(
                change.place().site(),
                change.device(),
                change.old(),
                change.fresh(),
                change.place().zone(),
                change.at());
    }
}
