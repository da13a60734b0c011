package org.roundsman.reports.figures;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.roundsman.alarms.PastEpisode;
import org.roundsman.claims.ReplacedUnits.Replaced;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Outage.Cause;
import org.roundsman.reports.figures.SitePeriod.Point;
import org.roundsman.triage.Impacts;

/** Tells the outages of a site: what was silent together, why, for how many people, and what we did. */
public final class Outages {

    private final Impacts impacts;
    private final PastEvents events;

    public Outages(Impacts impacts, PastEvents events) {
        this.impacts = impacts;
        this.events = events;
    }

    /** An outage, and which access points were silent in it. */
    public record Found(Outage outage, Set<Long> devices) {}

    /** By their begin. */
    public List<Found> of(SitePeriod site, List<Silence> silences) {
        Causes causes = new Causes(site, events.episodes());
        return Gone.of(silences, causes::of).stream()
                .map(gone -> new Found(outage(site, gone), gone.devices()))
                .toList();
    }

    /** Of several sites, by their begin; what began together by site. */
    public static List<Found> sorted(List<Found> found) {
        Comparator<Outage> order = Comparator.comparing(Outage::from)
                .thenComparing(Outage::site, String.CASE_INSENSITIVE_ORDER)
                .thenComparing(Outage::siteId)
                .thenComparing(Outage::what, String.CASE_INSENSITIVE_ORDER);
        return found.stream().sorted(Comparator.comparing(Found::outage, order)).toList();
    }

    private Outage outage(SitePeriod site, Gone gone) {
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
                gone.devices().size() == there(site, gone.to()),
                gone.silence(),
                people(site, gone),
                personMinutes(site, gone),
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

    private static long there(SitePeriod site, Instant at) {
        return site.points().stream().filter(point -> point.since().isBefore(at)).count();
    }

    private OptionalInt people(SitePeriod site, Gone gone) {
        OptionalInt told = gone.cause().map(PastEpisode::people).orElse(OptionalInt.empty());
        return told.isPresent()
                ? told
                : impacts.of(site.siteId(), gone.devices(), gone.from()).clients();
    }

    private OptionalDouble personMinutes(SitePeriod site, Gone gone) {
        double sum = 0;
        boolean any = false;
        for (Silence silence : gone.silences()) {
            if (silence.length().compareTo(Impacts.LONGEST) > 0) {
                return OptionalDouble.empty();
            }
            OptionalDouble lost = impacts.personMinutes(
                    site.siteId(), List.of(silence.deviceId()), silence.from(), silence.to());
            any |= lost.isPresent();
            sum += lost.orElse(0);
        }
        return any ? OptionalDouble.of(Rounding.of(sum)) : OptionalDouble.empty();
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
