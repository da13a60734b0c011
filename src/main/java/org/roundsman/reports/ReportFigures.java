package org.roundsman.reports;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.roundsman.reports.figures.Advice;
import org.roundsman.reports.figures.Costs;
import org.roundsman.reports.figures.Crowds;
import org.roundsman.reports.figures.Dealings;
import org.roundsman.reports.figures.Doings;
import org.roundsman.reports.figures.EarlierPeriods;
import org.roundsman.reports.figures.Inventory;
import org.roundsman.reports.figures.Outages;
import org.roundsman.reports.figures.Outages.Found;
import org.roundsman.reports.figures.PastEvents;
import org.roundsman.reports.figures.Radios;
import org.roundsman.reports.figures.Rooms;
import org.roundsman.reports.figures.SitePeriod;
import org.roundsman.reports.figures.SiteTimes;
import org.roundsman.reports.figures.WatchedSites;
import org.roundsman.triage.PastPeople;

/**
 * Puts a report together from what is stored. The number of statements rises with the number of sites, not with that of access
 * points or outages. For the service itself: callers check the customer scope. Thread-safe.
 */
@ApplicationScoped
public class ReportFigures {

    private final DataSource database;
    private final WatchedSites watched;
    private final PastPeople people;
    private final Inventory inventory;
    private final boolean invented;

    @Inject
    public ReportFigures(
            DataSource database,
            WatchedSites watched,
            PastPeople people,
            Inventory inventory,
            @ConfigProperty(name = "roundsman.demo.enabled", defaultValue = "false") boolean invented) {
        this.database = database;
        this.watched = watched;
        this.people = people;
        this.inventory = inventory;
        this.invented = invented;
    }

    /**
     * The report of these days. While they are not over at a site, its figures reach up to that moment.
     *
     * @param asOf the present moment: what has no past, such as firmware, is told as it stands
     */
    public Report of(ReportSubject subject, Instant asOf) {
        List<SiteTimes> times = watched.of(subject, asOf);
        List<SitePeriod> periods = times.stream().map(SiteTimes::site).toList();
        Beside<List<RadioFigures>> channels = Beside.start(() -> new Radios(database).of(periods));
        PastEvents events = PastEvents.of(database, subject, asOf);
        List<Found> found = outages(times, events);
        EarlierPeriods earlier = EarlierPeriods.of(subject);
        Crowds crowds = new Crowds(database);
        List<SiteFigures> sites = sites(times, crowds, earlier);
        List<Outage> outages = found.stream().map(Found::outage).toList();
        List<RadioFigures> radios = channels.result();
        List<Room> rooms = Rooms.of(periods, radios, found);
        Equipment equipment = inventory.of(subject.customerId(), subject, asOf);
        Costs costs = inventory.costs(subject.customerId(), asOf);
        Watch whole = sum(sites, SiteFigures::whole);
        return new Report(
                Report.FORM,
                subject,
                asOf,
                invented,
                whole,
                sum(sites, SiteFigures::service),
                crowds.of(periods, earlier),
                sites,
                outages,
                radios,
                rooms,
                equipment,
                Dealings.of(subject, asOf, events.episodes()),
                new Doings(subject, asOf).of(periods, events),
                Advice.of(sites, outages, rooms, equipment, whole, costs));
    }

    private static List<SiteFigures> sites(List<SiteTimes> times, Crowds crowds, EarlierPeriods earlier) {
        return times.stream()
                .map(site -> figures(site, crowds.ofSite(site.site(), earlier)))
                .toList();
    }

    private List<Found> outages(List<SiteTimes> times, PastEvents events) {
        Outages outages = new Outages(people, events);
        return Outages.sorted(
                times.stream().flatMap(site -> outages.of(site).stream()).toList());
    }

    private static SiteFigures figures(SiteTimes times, Crowd crowd) {
        SitePeriod site = times.site();
        return new SiteFigures(
                site.siteId(),
                site.site(),
                site.town(),
                site.zone(),
                site.target(),
                Duration.between(site.from(), site.to()),
                times.serviceHours(),
                site.points().size(),
                times.since(),
                times.whole(),
                times.service(),
                times.days(),
                crowd);
    }

    private static Watch sum(List<SiteFigures> sites, Function<SiteFigures, Watch> watch) {
        return sites.stream().map(watch).reduce(Watch.NONE, Watch::plus);
    }
}
