package org.roundsman.triage;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.planned.Stretch;

/** When a site needs its Wi-Fi, by its own clock; without any hours: always. */
public record ServiceTime(ZoneId zone, List<ServiceHours> hours) {

    public ServiceTime {
        hours = List.copyOf(hours);
    }

    /** Whether it needs it at that moment. */
    public boolean open(Instant at) {
        ZonedDateTime local = at.atZone(zone);
        DayOfWeek day = local.getDayOfWeek();
        LocalTime time = local.toLocalTime();
        return hours.isEmpty()
                || hours.stream()
                        .anyMatch(stretch -> stretch.weekday == day.getValue()
                                && !time.isBefore(stretch.opens)
                                && (stretch.closes.equals(LocalTime.MIDNIGHT) || time.isBefore(stretch.closes)));
    }

    /** The service hours between two moments, ascending, neither overlapping nor touching. */
    public List<Stretch> between(Instant from, Instant to) {
        if (hours.isEmpty()) {
            return Stretch.of(from, to).stream().toList();
        }
        LocalDate first = from.atZone(zone).toLocalDate();
        LocalDate last = to.atZone(zone).toLocalDate();
        return Stretch.merged(first.datesUntil(last.plusDays(1))
                .flatMap(day -> hours.stream()
                        .filter(stretch -> stretch.weekday == day.getDayOfWeek().getValue())
                        .flatMap(stretch -> Stretch.of(at(day, stretch.opens), end(day, stretch.closes)).stream()))
                .flatMap(stretch -> stretch.within(from, to).stream())
                .toList());
    }

    private Instant end(LocalDate day, LocalTime closes) {
        return closes.equals(LocalTime.MIDNIGHT) ? at(day.plusDays(1), LocalTime.MIDNIGHT) : at(day, closes);
    }

    private Instant at(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(zone).toInstant();
    }

    /** How long the service hours of these moments last. */
    public Duration length(Instant from, Instant to) {
        return between(from, to).stream().map(Stretch::length).reduce(Duration.ZERO, Duration::plus);
    }
}
