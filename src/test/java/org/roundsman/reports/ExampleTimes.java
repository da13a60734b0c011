package org.roundsman.reports;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Adds up what happened at the clinics of {@link ReportExample}; things at one access point never overlap. */
final class ExampleTimes {

    private final List<Happening> happenings = new ArrayList<>();

    private enum Kind {
        SILENT,
        PLANNED,
        UNWATCHED
    }

    private record Happening(long site, Kind kind, int accessPoints, Instant from, Instant to) {}

    private record Window(Instant from, Instant to) {}

    ExampleTimes(List<Outage> outages) {
        outages.forEach(outage -> happenings.add(
                new Happening(outage.siteId(), Kind.SILENT, outage.accessPoints(), outage.from(), outage.to())));
    }

    ExampleTimes planned(ExampleClinic clinic, Instant from, Instant to) {
        return with(clinic, Kind.PLANNED, from, to);
    }

    ExampleTimes unwatched(ExampleClinic clinic, Instant from, Instant to) {
        return with(clinic, Kind.UNWATCHED, from, to);
    }

    private ExampleTimes with(ExampleClinic clinic, Kind kind, Instant from, Instant to) {
        happenings.add(new Happening(clinic.id(), kind, clinic.places().size(), from, to));
        return this;
    }

    SiteFigures site(ExampleClinic clinic, Crowd crowd) {
        List<SiteFigures.Day> days = new ArrayList<>();
        Watch service = Watch.NONE;
        Duration serviceHours = Duration.ZERO;
        for (LocalDate day = ReportExample.SUBJECT.from();
                day.isBefore(ReportExample.SUBJECT.to());
                day = day.plusDays(1)) {
            Window whole = window(day, LocalTime.MIDNIGHT, day.plusDays(1), LocalTime.MIDNIGHT);
            days.add(new SiteFigures.Day(day, Duration.between(whole.from(), whole.to()), watch(clinic, whole)));
            Optional<Window> open = day.isBefore(clinic.since()) ? Optional.empty() : open(day);
            if (open.isPresent()) {
                service = service.plus(watch(clinic, open.get()));
                serviceHours = serviceHours
                        .plus(Duration.between(open.get().from(), open.get().to()))
                        .minus(shared(clinic, Kind.PLANNED, open.get())
                                .dividedBy(clinic.places().size()));
            }
        }
        return new SiteFigures(
                clinic.id(),
                clinic.name(),
                clinic.town(),
                ReportExample.LONDON,
                ExampleClinic.TARGET,
                Duration.ofHours(745),
                serviceHours,
                clinic.places().size(),
                Optional.of(clinic.since()).filter(since -> since.isAfter(ReportExample.SUBJECT.from())),
                days.stream().map(SiteFigures.Day::watch).reduce(Watch.NONE, Watch::plus),
                service,
                days,
                crowd);
    }

    private static Optional<Window> open(LocalDate day) {
        if (day.getDayOfWeek() == DayOfWeek.SUNDAY) {
            return Optional.empty();
        }
        return Optional.of(
                day.getDayOfWeek() == DayOfWeek.SATURDAY
                        ? window(day, LocalTime.of(9, 0), day, LocalTime.of(13, 0))
                        : window(day, LocalTime.of(8, 0), day, LocalTime.of(18, 0)));
    }

    private static Window window(LocalDate day, LocalTime from, LocalDate last, LocalTime to) {
        return new Window(
                day.atTime(from).atZone(ReportExample.LONDON).toInstant(),
                last.atTime(to).atZone(ReportExample.LONDON).toInstant());
    }

    private Watch watch(ExampleClinic clinic, Window window) {
        Instant since = clinic.since().atStartOfDay(ReportExample.LONDON).toInstant();
        if (window.from().isBefore(since)) {
            return Watch.NONE;
        }
        Duration length = Duration.between(window.from(), window.to())
                .multipliedBy(clinic.places().size());
        Duration answering = length;
        for (Kind kind : Kind.values()) {
            answering = answering.minus(shared(clinic, kind, window));
        }
        return new Watch(
                length,
                answering,
                shared(clinic, Kind.SILENT, window),
                Duration.ZERO,
                shared(clinic, Kind.PLANNED, window),
                shared(clinic, Kind.UNWATCHED, window));
    }

    /** Time of all access points together. */
    private Duration shared(ExampleClinic clinic, Kind kind, Window window) {
        Duration sum = Duration.ZERO;
        for (Happening one : happenings) {
            Instant from = one.from().isAfter(window.from()) ? one.from() : window.from();
            Instant to = one.to().isBefore(window.to()) ? one.to() : window.to();
            if (one.site() == clinic.id() && one.kind() == kind && from.isBefore(to)) {
                sum = sum.plus(Duration.between(from, to).multipliedBy(one.accessPoints()));
            }
        }
        return sum;
    }
}
