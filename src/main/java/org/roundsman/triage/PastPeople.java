package org.roundsman.triage;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.roundsman.planned.PlannedWork;
import org.roundsman.planned.Stretch;
import org.roundsman.readings.PastClients;
import org.roundsman.readings.PastClients.Quarter;
import org.roundsman.readings.PastClients.Spot;
import org.roundsman.triage.impact.Usual;

/**
 * Who would have been on devices of a site at many times of the past, by the rules of {@link Impacts}, but asked for at once: a
 * fixed number of statements. Callers check the customer scope. Thread-safe.
 */
@ApplicationScoped
public class PastPeople {

    private static final double MINUTE = 60_000;

    private final PastClients clients;
    private final PlannedWork planned;

    @Inject
    public PastPeople(PastClients clients, PlannedWork planned) {
        this.clients = clients;
        this.planned = planned;
    }

    /**
     * A time in which somebody could not use a device.
     *
     * @param to end, exclusive
     */
    public record Absence(long deviceId, Instant from, Instant to) {}

    /** What is usual at a site in the hours of these absences. */
    public Usually of(long siteId, ZoneId zone, Collection<Absence> absences) {
        Map<Instant, Set<Long>> hours = new TreeMap<>();
        absences.forEach(
                absence -> hours(absence, zone).forEach(hour -> hours.computeIfAbsent(hour, made -> new HashSet<>())
                        .add(absence.deviceId())));
        Map<Instant, List<HourOfWeek.Stretch>> weeks = new HashMap<>();
        hours.keySet().forEach(hour -> weeks.put(hour, HourOfWeek.before(hour, zone, Impacts.WEEKS)));
        Set<Spot> spots = new HashSet<>();
        hours.forEach((hour, devices) -> weeks.get(hour).stream()
                .flatMap(week -> week.quarters().stream())
                .forEach(quarter -> devices.forEach(device -> spots.add(new Spot(device, quarter)))));
        Map<Instant, List<Quarter>> figures = clients.at(spots).stream().collect(Collectors.groupingBy(Quarter::at));
        Map<Long, List<Stretch>> work = work(siteId, weeks);
        Map<Instant, Usual> usual = new HashMap<>();
        weeks.forEach((hour, before) -> usual.put(hour, Usual.of(before, in(before, figures), work)));
        return new Usually(zone, usual);
    }

    /** Begins of the hours by the clock that an absence touches. */
    private static Set<Instant> hours(Absence absence, ZoneId zone) {
        Set<Instant> hours = new TreeSet<>();
        Instant at = absence.from();
        while (at.isBefore(absence.to())) {
            HourOfWeek.Stretch hour = HourOfWeek.of(at, zone);
            hours.add(hour.from());
            at = hour.to();
        }
        return hours;
    }

    private static List<Quarter> in(List<HourOfWeek.Stretch> hours, Map<Instant, List<Quarter>> figures) {
        return hours.stream()
                .flatMap(hour -> hour.quarters().stream())
                .flatMap(quarter -> figures.getOrDefault(quarter, List.of()).stream())
                .toList();
    }

    private Map<Long, List<Stretch>> work(long siteId, Map<Instant, List<HourOfWeek.Stretch>> weeks) {
        TreeSet<Instant> ends = new TreeSet<>();
        weeks.values().stream().flatMap(List::stream).forEach(hour -> {
            ends.add(hour.from());
            ends.add(hour.to());
        });
        return ends.isEmpty() ? Map.of() : planned.ofSite(siteId, ends.first(), ends.last());
    }

    /** Answers for the absences that were asked about. Immutable. */
    public static final class Usually {

        private final ZoneId zone;
        private final Map<Instant, Usual> hours;

        private Usually(ZoneId zone, Map<Instant, Usual> hours) {
            this.zone = zone;
            this.hours = hours;
        }

        /** Clients of these devices together at that moment; empty when there is no past to tell from. */
        public OptionalInt clients(Collection<Long> devices, Instant at) {
            Usual usual = hours.get(HourOfWeek.of(at, zone).from());
            return usual == null
                    ? OptionalInt.empty()
                    : usual.of(devices, devices.size(), false).clients();
        }

        /** Time that people were without, in minutes, hour by hour; empty when there is no past to tell from. */
        public OptionalDouble personMinutes(Absence absence) {
            double sum = 0;
            boolean any = false;
            Instant at = absence.from();
            while (at.isBefore(absence.to())) {
                HourOfWeek.Stretch hour = HourOfWeek.of(at, zone);
                Instant end = hour.to().isBefore(absence.to()) ? hour.to() : absence.to();
                Usual usual = hours.get(hour.from());
                OptionalDouble people =
                        usual == null ? OptionalDouble.empty() : usual.clients(List.of(absence.deviceId()));
                any |= people.isPresent();
                sum += people.orElse(0) * Duration.between(at, end).toMillis() / MINUTE;
                at = end;
            }
            return any ? OptionalDouble.of(sum) : OptionalDouble.empty();
        }
    }
}
