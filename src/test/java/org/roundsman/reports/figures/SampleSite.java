package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.measure.Condition;
import org.roundsman.planned.Stretch;
import org.roundsman.readings.Span;
import org.roundsman.reports.figures.SitePeriod.Point;
import org.roundsman.triage.ServiceTime;

/** An invented site over some days by its own clock, with access points 1, 2, ... */
final class SampleSite {

    static final long SITE = 7;

    private static final Instant EVER = Instant.parse("2020-01-01T00:00:00Z");

    private final ZoneId zone;
    private final Instant from;
    private Instant to;
    private final List<Point> points = new ArrayList<>();
    private final List<ServiceHours> hours = new ArrayList<>();
    private final Map<Long, List<Span>> spans = new HashMap<>();
    private final Map<Long, List<Stretch>> planned = new HashMap<>();

    SampleSite(String zone, LocalDate first, LocalDate end) {
        this.zone = ZoneId.of(zone);
        this.from = first.atStartOfDay(this.zone).toInstant();
        this.to = end.atStartOfDay(this.zone).toInstant();
    }

    static SampleSite month(String zone, String month) {
        YearMonth of = YearMonth.parse(month);
        return new SampleSite(zone, of.atDay(1), of.plusMonths(1).atDay(1));
    }

    static Point point(long id) {
        return new Point(id, "ap-" + id, "room " + id, EVER);
    }

    /** So many access points that were always there. */
    SampleSite points(int count) {
        for (long id = 1; id <= count; id++) {
            points.add(point(id));
        }
        return this;
    }

    SampleSite pointSince(long id, String local) {
        points.add(new Point(id, "ap-" + id, "", at(local)));
        return this;
    }

    SampleSite asOf(String local) {
        to = at(local);
        return this;
    }

    SampleSite open(int weekday, String opens, String closes) {
        hours.add(new ServiceHours(weekday, java.time.LocalTime.parse(opens), java.time.LocalTime.parse(closes)));
        return this;
    }

    SampleSite span(long device, Instant begin, Instant end, Condition condition) {
        spans.computeIfAbsent(device, made -> new ArrayList<>())
                .add(new Span(begin, Optional.of(end), condition, Optional.empty()));
        return this;
    }

    SampleSite span(long device, String begin, String end, Condition condition) {
        return span(device, at(begin), at(end), condition);
    }

    /** Answers all the time but for these, each a begin and an end. */
    SampleSite silentOnly(long device, String... moments) {
        Instant last = from.minus(Duration.ofDays(1));
        for (Instant[] pair : pairs(moments)) {
            span(device, last, pair[0], Condition.ANSWERING);
            span(device, pair[0], pair[1], Condition.SILENT);
            last = pair[1];
        }
        return span(device, last, to.plus(Duration.ofDays(1)), Condition.ANSWERING);
    }

    private List<Instant[]> pairs(String... moments) {
        List<Instant[]> pairs = new ArrayList<>();
        Instant[] all = Arrays.stream(moments).map(this::at).toArray(Instant[]::new);
        for (int i = 0; i + 1 < all.length; i += 2) {
            pairs.add(new Instant[] {all[i], all[i + 1]});
        }
        return pairs;
    }

    /** Work on a device, or with 0 on the whole site. */
    SampleSite work(long device, Instant begin, Instant end) {
        planned.computeIfAbsent(device, made -> new ArrayList<>()).add(new Stretch(begin, end));
        return this;
    }

    SampleSite work(long device, String begin, String end) {
        return work(device, at(begin), at(end));
    }

    Instant at(String local) {
        return LocalDateTime.parse(local).atZone(zone).toInstant();
    }

    Instant from() {
        return from;
    }

    Instant to() {
        return to;
    }

    SitePeriod site() {
        return new SitePeriod(SITE, "Mill Lane", "Saltmarsh", zone, 99.5, from, to, points);
    }

    SiteTimes times() {
        return new SiteTimes(site(), new ServiceTime(zone, hours), spans, planned);
    }
}
