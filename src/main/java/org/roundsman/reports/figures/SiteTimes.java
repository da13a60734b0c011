package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.roundsman.measure.Condition;
import org.roundsman.planned.Stretch;
import org.roundsman.readings.Availability;
import org.roundsman.readings.Span;
import org.roundsman.reports.SiteFigures.Day;
import org.roundsman.reports.Watch;
import org.roundsman.reports.figures.SitePeriod.Point;
import org.roundsman.triage.ServiceTime;

/**
 * Works out how the access points of one site stood, from any spans and windows. Reads nothing.
 *
 * @param spans by device, of each without overlap; one without an end counts for nothing, since nothing is known of it
 * @param planned under 0 the work on the site as a whole, under a device's id that on the device alone
 */
public record SiteTimes(
        SitePeriod site, ServiceTime time, Map<Long, List<Span>> spans, Map<Long, List<Stretch>> planned) {

    /** Around the clock. */
    public Watch whole() {
        return watch(site.from(), site.to());
    }

    /** In service hours. */
    public Watch service() {
        return time.between(site.from(), site.to()).stream()
                .map(open -> watch(open.from(), open.to()))
                .reduce(Watch.NONE, Watch::plus);
    }

    /** Clock time in service hours without work on the site as a whole, from when it had its first access point. */
    public Duration serviceHours() {
        Instant from = first().filter(site.from()::isBefore).orElse(site.from());
        List<Stretch> left = Stretch.without(time.between(from, site.to()), planned.getOrDefault(0L, List.of()));
        return left.stream().map(Stretch::length).reduce(Duration.ZERO, Duration::plus);
    }

    /** The day on which it got its first access point, where that lies within the stretch. */
    public Optional<LocalDate> since() {
        return first().filter(site.from()::isBefore)
                .map(at -> at.atZone(site.zone()).toLocalDate());
    }

    private Optional<Instant> first() {
        return site.points().stream().map(Point::since).min(Instant::compareTo);
    }

    /** Each day by the site's clock; the last one ends with the stretch. */
    public List<Day> days() {
        List<Day> days = new ArrayList<>();
        LocalDate date = site.from().atZone(site.zone()).toLocalDate();
        Instant from = site.from();
        while (from.isBefore(site.to())) {
            Instant next = Bounds.start(date.plusDays(1), site.zone());
            Instant to = next.isBefore(site.to()) ? next : site.to();
            days.add(new Day(date, Duration.between(from, to), watch(from, to)));
            date = date.plusDays(1);
            from = next;
        }
        return days;
    }

    /**
     * Whether these were all that there were between these moments: of the others nothing is known, since they could not be read
     * or nobody looked, or they were silent all the time by themselves.
     */
    boolean allGone(Set<Long> devices, Instant from, Instant to) {
        return site.points().stream()
                .map(Point::deviceId)
                .filter(device -> !devices.contains(device))
                .noneMatch(device -> answered(device, from, to));
    }

    private boolean answered(long device, Instant from, Instant to) {
        return spans.getOrDefault(device, List.of()).stream()
                .filter(span -> span.condition() == Condition.ANSWERING)
                .anyMatch(span -> span.from().isBefore(to)
                        && span.to().filter(from::isBefore).isPresent());
    }

    private Watch watch(Instant from, Instant to) {
        return site.points().stream()
                .filter(point -> point.from(from).isBefore(to))
                .map(point -> watch(point, point.from(from), to))
                .reduce(Watch.NONE, Watch::plus);
    }

    private Watch watch(Point point, Instant from, Instant to) {
        Availability sums =
                Availability.of(spans.getOrDefault(point.deviceId(), List.of()), from, to, from, work(point));
        return new Watch(
                sums.period(), sums.answering(), sums.silent(), sums.refusing(), sums.planned(), sums.unwatched());
    }

    private List<Stretch> work(Point point) {
        return Stream.concat(
                        planned.getOrDefault(0L, List.of()).stream(),
                        planned.getOrDefault(point.deviceId(), List.of()).stream())
                .toList();
    }

    /** Every time that an access point was silent outside planned work, cut to the stretch; by access point, ascending. */
    public List<Silence> silences() {
        return site.points().stream().flatMap(this::silences).toList();
    }

    private Stream<Silence> silences(Point point) {
        List<Stretch> silent = Stretch.merged(spans.getOrDefault(point.deviceId(), List.of()).stream()
                .filter(span -> span.condition() == Condition.SILENT)
                .flatMap(span -> span.to().flatMap(to -> Stretch.of(span.from(), to)).stream())
                .toList());
        return silent.stream().flatMap(whole -> whole.within(point.from(site.from()), site.to()).stream()
                .flatMap(cut -> Stretch.without(List.of(cut), work(point)).stream())
                .map(part -> silence(point, whole, part)));
    }

    private Silence silence(Point point, Stretch whole, Stretch part) {
        boolean before = part.from().equals(site.from()) && whole.from().isBefore(site.from());
        boolean after = part.to().equals(site.to()) && whole.to().isAfter(site.to());
        return new Silence(point.deviceId(), part.from(), part.to(), before, after);
    }
}
