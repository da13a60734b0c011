package org.roundsman.reports.figures;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.claims.ReplacedUnits.Replaced;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Outage.Cause;
import org.roundsman.reports.figures.SitePeriod.Point;
import org.roundsman.triage.PastPeople;
import org.roundsman.triage.PastPeople.Absence;
import org.roundsman.triage.PastPeople.Usually;

/** Tells the outages of a site: what was silent together, why, for how many people, and what we did. */
public final class Outages {

    /** Of a longer absence the past tells too little to say how many people were without. */
    private static final Duration LONGEST = Duration.ofDays(2);

    private final PastPeople people;
    private final PastEvents events;

    public Outages(PastPeople people, PastEvents events) {
        this.people = people;
        this.events = events;
    }

    /** An outage, and which access points were silent in it. */
    public record Found(Outage outage, Set<Long> devices) {}

    /** By their begin. */
    public List<Found> of(SiteTimes times) {
        SitePeriod site = times.site();
        Causes causes = new Causes(site, events.episodes());
        List<Gone> all = Gone.of(times.silences(), causes::of);
        Usually usually = people.of(
                site.siteId(),
                site.zone(),
                all.stream().flatMap(Outages::absences).toList());
        return all.stream()
                .map(gone -> new Found(outage(times, gone, usually), gone.devices()))
                .toList();
    }

    /** What has to be known of an outage: who was there when it began, and who was without in each silence. */
    private static Stream<Absence> absences(Gone gone) {
        return Stream.concat(
                gone.devices().stream()
                        .map(device ->
                                new Absence(device, gone.from(), gone.from().plusMillis(1))),
                gone.silences().stream().filter(Outages::bearable).map(Outages::absence));
    }

    private static boolean bearable(Silence silence) {
        return silence.length().compareTo(LONGEST) <= 0;
    }

    private static Absence absence(Silence silence) {
        return new Absence(silence.deviceId(), silence.from(), silence.to());
    }

    /** Of several sites, by their begin; what began together by site. */
    public static List<Found> sorted(List<Found> found) {
        Comparator<Outage> order = Comparator.comparing(Outage::from)
                .thenComparing(Outage::site, String.CASE_INSENSITIVE_ORDER)
                .thenComparing(Outage::siteId)
                .thenComparing(Outage::what, String.CASE_INSENSITIVE_ORDER);
        return found.stream().sorted(Comparator.comparing(Found::outage, order)).toList();
    }

    private Outage outage(SiteTimes times, Gone gone, Usually usually) {
        SitePeriod site = times.site();
        Optional<PastEpisode> root = gone.cause();
        return new Outage(
                site.siteId(),
                site.site(),
                site.zone(),
                root.map(Causes::word).orElse(Cause.NOT_WORKED_OUT),
                root.map(PastEpisode::name).orElseGet(() -> name(site, gone)),
                gone.from(),
                gone.to(),
                gone.goesOn(),
                gone.begunBefore(),
                gone.devices().size(),
                times.allGone(gone.devices(), gone.from(), gone.to()),
                gone.silence(),
                gone.times(),
                people(gone, usually),
                personMinutes(gone, usually),
                root.map(PastEpisode::raised),
                root.flatMap(PastEpisode::taken),
                replaced(gone),
                root.map(each -> OptionalLong.of(each.alarmId())).orElse(OptionalLong.empty()));
    }

    private static String name(SitePeriod site, Gone gone) {
        return gone.devices().size() > 1
                ? site.site()
                : site.points().stream()
                        .filter(point -> gone.devices().contains(point.deviceId()))
                        .map(Point::device)
                        .findFirst()
                        .orElse(site.site());
    }

    private static OptionalInt people(Gone gone, Usually usually) {
        OptionalInt told = gone.cause().map(PastEpisode::people).orElse(OptionalInt.empty());
        return told.isPresent() ? told : usually.clients(gone.devices(), gone.from());
    }

    private static OptionalDouble personMinutes(Gone gone, Usually usually) {
        if (!gone.silences().stream().allMatch(Outages::bearable)) {
            return OptionalDouble.empty();
        }
        List<Double> lost = gone.silences().stream()
                .flatMapToDouble(silence -> usually.personMinutes(absence(silence)).stream())
                .boxed()
                .toList();
        return lost.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Rounding.of(
                        lost.stream().mapToDouble(Double::doubleValue).sum()));
    }

    /** Whether the failed thing itself got another unit while it was gone or soon after. */
    private boolean replaced(Gone gone) {
        OptionalLong failed = gone.cause().isPresent()
                ? gone.cause().get().deviceId()
                : OptionalLong.of(gone.devices().iterator().next());
        boolean one = gone.cause().isPresent() || gone.devices().size() == 1;
        return one
                && events.replaced().stream()
                        .filter(unit -> failed.equals(OptionalLong.of(unit.deviceId())))
                        .map(Replaced::at)
                        .anyMatch(at -> !at.isBefore(gone.from())
                                && !at.isAfter(gone.to().plus(PastEvents.READ_LATER)));
    }
}
