package org.roundsman.triage;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.roundsman.alarms.Impact;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.measure.Condition;
import org.roundsman.planned.PlannedWork;
import org.roundsman.planned.PlannedWorkChanged;
import org.roundsman.planned.Stretch;
import org.roundsman.readings.PastClients;
import org.roundsman.readings.PastClients.Quarter;
import org.roundsman.readings.PastRadios;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.Span;
import org.roundsman.triage.impact.MonthTime;
import org.roundsman.triage.impact.RadioShares;
import org.roundsman.triage.impact.Usual;
import org.roundsman.triage.store.SiteFacts;
import org.roundsman.triage.store.SiteFacts.Facts;

/**
 * Who suffers when devices do not work: the median clients of the same hour of the week over the last four weeks, by the
 * site's clock, from stored quarter hours. Time in which an access point was silent or worked on does not count. Figures of a
 * site and an hour are worked out once and kept for a while. Callers check the customer scope. Thread-safe.
 */
@ApplicationScoped
public class Impacts {

    /** Weeks that are looked back. */
    public static final int WEEKS = 4;

    private static final int KEPT = 2_000;
    private static final Duration LONGEST = Duration.ofDays(2);
    /** So long it stands that nothing is known of an hour; a past may be loaded meanwhile. */
    private static final Duration UNKNOWN_STANDS = Duration.ofMinutes(2);

    private static final double MINUTE = 60_000;

    private final PastClients clients;
    private final PastSpans spans;
    private final PlannedWork planned;
    private final SiteFacts facts;
    private final PastRadios radios;

    /** Guarded by itself. */
    private final Map<SiteHour, Kept<Usual>> known = recent();

    /** Guarded by itself; worked out only where one radio is in trouble. */
    private final Map<SiteHour, Kept<RadioShares>> shares = recent();

    private final Map<Long, Facts> sites = new ConcurrentHashMap<>();

    private record SiteHour(long siteId, Instant hour) {}

    private record Kept<T>(T figures, boolean known, Instant asked) {
        boolean good(Instant at) {
            return known || Duration.between(asked, at).abs().compareTo(UNKNOWN_STANDS) < 0;
        }
    }

    /** The one asked for longest ago goes first. */
    private static <T> Map<SiteHour, Kept<T>> recent() {
        return new LinkedHashMap<>(64, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<SiteHour, Kept<T>> eldest) {
                return size() > KEPT;
            }
        };
    }

    @Inject
    public Impacts(DataSource database, PastClients clients, PastSpans spans, PlannedWork planned) {
        this.clients = clients;
        this.spans = spans;
        this.planned = planned;
        this.facts = new SiteFacts(database);
        this.radios = new PastRadios(database);
    }

    /** Who would be on these devices of a site at that moment. Those that are no access points have no clients. */
    public Impact of(long siteId, Collection<Long> devices, Instant at) {
        return site(siteId).map(site -> of(site, devices, at)).orElseGet(() -> Impact.unknown(0, false));
    }

    private Impact of(Facts site, Collection<Long> devices, Instant at) {
        Set<Long> points = new HashSet<>(devices);
        points.retainAll(new HashSet<>(site.accessPoints()));
        return usual(site, at).of(points, points.size(), site.time().open(at));
    }

    /**
     * Who would be on one radio of an access point at that moment: the radio's usual share of who would be on the access point.
     *
     * @param radio its number
     * @return without a number of people where nothing tells the share
     */
    public Impact ofRadio(long siteId, long deviceId, int radio, Instant at) {
        return site(siteId).map(site -> ofRadio(site, deviceId, radio, at)).orElseGet(() -> Impact.unknown(0, false));
    }

    private Impact ofRadio(Facts site, long deviceId, int radio, Instant at) {
        Impact whole = of(site, List.of(deviceId), at);
        if (whole.clients().orElse(0) == 0) {
            return whole;
        }
        OptionalDouble share = shares(site, at).of(deviceId, radio);
        return share.isPresent()
                ? usual(site, at).ofShare(deviceId, share.getAsDouble(), whole.serviceHours())
                : Impact.unknown(whole.devices(), whole.serviceHours());
    }

    /**
     * Person-minutes that were lost: who would have been there, hour by hour.
     *
     * @return empty when there is no past to tell from, or when it lasted longer than two days
     */
    public OptionalDouble personMinutes(long siteId, Collection<Long> devices, Instant from, Instant to) {
        Optional<Facts> site = site(siteId);
        if (site.isEmpty() || Duration.between(from, to).compareTo(LONGEST) > 0) {
            return OptionalDouble.empty();
        }
        double sum = 0;
        boolean any = false;
        Instant at = from;
        while (at.isBefore(to)) {
            Instant end = earlier(HourOfWeek.of(at, site.get().time().zone()).to(), to);
            OptionalDouble people = usual(site.get(), at).clients(devices);
            any |= people.isPresent();
            sum += people.orElse(0) * Duration.between(at, end).toMillis() / MINUTE;
            at = end;
        }
        return any ? OptionalDouble.of(sum) : OptionalDouble.empty();
    }

    /** How the site stands against its target in the month that goes on; empty when there is no such site. */
    public Optional<MonthSoFar> month(long siteId, Instant now) {
        return facts.of(siteId).map(site -> month(site, now));
    }

    private MonthSoFar month(Facts site, Instant now) {
        ZoneId zone = site.time().zone();
        YearMonth month = YearMonth.from(now.atZone(zone));
        Instant from = month.atDay(1).atStartOfDay(zone).toInstant();
        Instant end = month.plusMonths(1).atDay(1).atStartOfDay(zone).toInstant();
        Map<Long, List<Stretch>> work = planned.ofSite(site.siteId(), from, now);
        List<Stretch> open = site.time().between(from, now);
        Duration answering = Duration.ZERO;
        Duration silent = Duration.ZERO;
        for (Map.Entry<Long, List<Span>> device :
                spans.of(site.accessPoints(), from, now).entrySet()) {
            List<Stretch> counted = MonthTime.without(open, work, device.getKey());
            answering = answering.plus(MonthTime.sum(counted, device.getValue(), Condition.ANSWERING, now));
            silent = silent.plus(MonthTime.sum(counted, device.getValue(), Condition.SILENT, now));
        }
        return new MonthSoFar(
                month,
                site.target(),
                MonthTime.length(MonthTime.without(open, work, 0)),
                site.time().length(from, end),
                answering,
                silent);
    }

    private Optional<Facts> site(long siteId) {
        Facts found = sites.get(siteId);
        if (found != null) {
            return Optional.of(found);
        }
        Optional<Facts> fresh = facts.of(siteId);
        fresh.ifPresent(site -> sites.put(siteId, site));
        return fresh;
    }

    private Usual usual(Facts site, Instant at) {
        SiteHour hour = new SiteHour(
                site.siteId(), HourOfWeek.of(at, site.time().zone()).from());
        synchronized (known) {
            Kept<Usual> found = known.get(hour);
            if (found != null && found.good(at)) {
                return found.figures();
            }
        }
        Usual fresh = workOut(site, at);
        synchronized (known) {
            known.put(hour, new Kept<>(fresh, fresh.known(), at));
        }
        return fresh;
    }

    private RadioShares shares(Facts site, Instant at) {
        ZoneId zone = site.time().zone();
        SiteHour hour = new SiteHour(site.siteId(), HourOfWeek.of(at, zone).from());
        synchronized (shares) {
            Kept<RadioShares> found = shares.get(hour);
            if (found != null && found.good(at)) {
                return found.figures();
            }
        }
        RadioShares fresh = RadioShares.of(radios, site.accessPoints(), HourOfWeek.before(at, zone, WEEKS), at);
        synchronized (shares) {
            shares.put(hour, new Kept<>(fresh, fresh.known(), at));
        }
        return fresh;
    }

    private Usual workOut(Facts site, Instant at) {
        List<HourOfWeek.Stretch> hours = HourOfWeek.before(at, site.time().zone(), WEEKS);
        if (hours.isEmpty()) {
            return Usual.of(List.of(), List.of(), Map.of());
        }
        List<Instant> quarters =
                hours.stream().flatMap(hour -> hour.quarters().stream()).toList();
        List<Quarter> figures = clients.of(site.accessPoints(), quarters);
        Instant first = hours.get(hours.size() - 1).from();
        return Usual.of(
                hours,
                figures,
                planned.ofSite(site.siteId(), first, hours.get(0).to()));
    }

    private static Instant earlier(Instant a, Instant b) {
        return a.isBefore(b) ? a : b;
    }

    void moved(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        forget();
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) PlannedWorkChanged event) {
        forget();
    }

    private void forget() {
        synchronized (known) {
            known.clear();
        }
        synchronized (shares) {
            shares.clear();
        }
        sites.clear();
    }
}
