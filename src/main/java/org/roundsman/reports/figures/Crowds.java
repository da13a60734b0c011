package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import javax.sql.DataSource;
import org.roundsman.readings.PastCrowds;
import org.roundsman.readings.PastCrowds.Quarter;
import org.roundsman.reports.Crowd;
import org.roundsman.reports.Crowd.Busiest;
import org.roundsman.reports.Crowd.Earlier;
import org.roundsman.reports.Crowd.Split;
import org.roundsman.reports.figures.SitePeriod.Point;

/**
 * Who was on the Wi-Fi of the sites of one report. Made anew for each report: it keeps what it read of a site for the figures of
 * all sites together. Not thread-safe.
 *
 * <p>The stretch itself comes from the quarter hours of access points and networks. The earlier ones, of which only the sums are
 * told, come from the roll-up of the site, which holds the same sums in a hundredth of the rows.
 */
public final class Crowds {

    private final PastCrowds past;
    private final Map<Stretch, List<Quarter>> read = new HashMap<>();

    private record Stretch(long siteId, Instant from, Instant to) {}

    /** What one stretch of time holds. @param expected hours that would have figures if every hour had */
    private record Held(CrowdHours hours, double expected) {

        double observed() {
            return expected == 0 ? 0 : Rounding.of(Math.min(1, hours.hours().size() / expected));
        }
    }

    public Crowds(DataSource source) {
        this.past = new PastCrowds(source);
    }

    /** Of one site, by its clock. */
    public Crowd ofSite(SitePeriod site, EarlierPeriods earlier) {
        return crowd(List.of(site), site.zone(), earlier);
    }

    /**
     * Of all sites together: hours that are the same moment are added up. They are told by the clock that most sites have, of
     * several the one whose site comes first.
     */
    public Crowd of(List<SitePeriod> all, EarlierPeriods earlier) {
        return crowd(all, clock(all), earlier);
    }

    private static ZoneId clock(List<SitePeriod> all) {
        Map<ZoneId, Integer> counts = new LinkedHashMap<>();
        all.forEach(site -> counts.merge(site.zone(), 1, Integer::sum));
        int most = counts.values().stream().max(Comparator.naturalOrder()).orElse(0);
        return counts.entrySet().stream()
                .filter(zone -> zone.getValue() == most)
                .findFirst()
                .map(Map.Entry::getKey)
                .orElse(ZoneOffset.UTC);
    }

    private Crowd crowd(List<SitePeriod> sites, ZoneId clock, EarlierPeriods earlier) {
        Held held = held(
                sites.stream()
                        .map(site -> new Part(site, site.from(), site.to()))
                        .toList(),
                clock,
                this::quarters);
        return new Crowd(
                held.hours().mean(),
                held.observed(),
                held.hours().busiest(),
                held.hours().typicalDay(),
                held.hours().week(),
                earlier(sites, clock, earlier.monthFrom(), earlier.monthTo()),
                earlier(sites, clock, earlier.yearFrom(), earlier.yearTo()));
    }

    /** A site in a stretch. */
    private record Part(SitePeriod site, Instant from, Instant to) {

        /** From when on there was anything to count. */
        Instant begin() {
            return site.points().stream()
                    .map(Point::since)
                    .min(Comparator.naturalOrder())
                    .filter(since -> since.isAfter(from))
                    .orElse(from);
        }

        boolean counts() {
            return begin().isBefore(to) && !site.points().isEmpty();
        }
    }

    private interface Reader {
        List<Quarter> of(Part part);
    }

    private static Held held(List<Part> parts, ZoneId clock, Reader reader) {
        List<Part> counting = parts.stream().filter(Part::counts).toList();
        CrowdHours hours = CrowdHours.together(
                clock,
                counting.stream()
                        .map(part -> CrowdHours.of(reader.of(part), clock))
                        .toList());
        return new Held(hours, expected(counting));
    }

    /** Begun hours from where the first site begins to where the last one ends. */
    private static double expected(List<Part> counting) {
        if (counting.isEmpty()) {
            return 0;
        }
        Instant from = counting.stream()
                .map(Part::begin)
                .min(Comparator.naturalOrder())
                .orElseThrow();
        Instant to =
                counting.stream().map(Part::to).max(Comparator.naturalOrder()).orElseThrow();
        return Math.ceil(Duration.between(from, to).toMillis()
                / (double) Duration.ofHours(1).toMillis());
    }

    private Earlier earlier(List<SitePeriod> sites, ZoneId clock, LocalDate from, LocalDate to) {
        Held held = held(
                sites.stream()
                        .map(site -> new Part(site, start(from, site.zone()), start(to, site.zone())))
                        .toList(),
                clock,
                this::totals);
        return held.hours()
                .mean()
                .map(mean -> new Earlier(
                        OptionalDouble.of(mean.all()),
                        held.hours().busiest().map(Busiest::clients).map(Split::all).stream()
                                .mapToDouble(Double::doubleValue)
                                .findFirst(),
                        held.observed()))
                .orElse(Earlier.NOTHING);
    }

    private static Instant start(LocalDate day, ZoneId zone) {
        return day.atStartOfDay(zone).toInstant();
    }

    private List<Quarter> quarters(Part part) {
        SitePeriod site = part.site();
        return read.computeIfAbsent(
                new Stretch(site.siteId(), part.from(), part.to()),
                stretch -> past.ofDevices(
                        site.points().stream().map(Point::deviceId).toList(), stretch.from(), stretch.to()));
    }

    private List<Quarter> totals(Part part) {
        return read.computeIfAbsent(
                new Stretch(part.site().siteId(), part.from(), part.to()),
                stretch -> past.ofSite(stretch.siteId(), stretch.from(), stretch.to()));
    }
}
