package org.roundsman.reports.figures;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.roundsman.planned.PlannedWork;
import org.roundsman.readings.PastSpans;
import org.roundsman.readings.Span;
import org.roundsman.reports.ReportSubject;
import org.roundsman.reports.figures.SitePeriod.Point;

/** Reads what the times of a customer's sites are worked out from. Thread-safe. */
@ApplicationScoped
public class WatchedSites {

    private final SitePeriods sites;
    private final PastSpans spans;
    private final PlannedWork planned;

    @Inject
    public WatchedSites(DataSource database, PastSpans spans, PlannedWork planned) {
        this.sites = new SitePeriods(database);
        this.spans = spans;
        this.planned = planned;
    }

    /** By name. A few statements for the customer, and a few for each site, whatever the number of access points. */
    public List<SiteTimes> of(ReportSubject subject, Instant asOf) {
        List<SitePeriods.Open> open = sites.of(subject, asOf);
        Bounds bounds = new Bounds(subject, asOf);
        Map<Long, List<Span>> all = spans.of(points(open), bounds.earliest(), bounds.latest());
        return open.stream()
                .map(one -> new SiteTimes(
                        one.site(),
                        one.time(),
                        all,
                        planned.ofSite(
                                one.site().siteId(),
                                one.site().from(),
                                one.site().to())))
                .toList();
    }

    private static Collection<Long> points(List<SitePeriods.Open> open) {
        return open.stream()
                .flatMap(one -> one.site().points().stream())
                .map(Point::deviceId)
                .toList();
    }
}
