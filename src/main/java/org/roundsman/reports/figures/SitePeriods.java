package org.roundsman.reports.figures;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.fleet.ServiceHours;
import org.roundsman.reports.ReportSubject;
import org.roundsman.reports.figures.SitePeriod.Point;
import org.roundsman.system.Rows;
import org.roundsman.triage.ServiceTime;

/** Reads the sites of a customer with their service hours and access points, as far as they were there in the stretch. */
public final class SitePeriods {

    private static final String SITES = """
        select id, name, town, time_zone, availability_target, created_at from site where customer_id = ?
        """;

    private static final String HOURS = """
        select h.site_id, h.weekday, h.opens, h.closes from site_hours h join site s on s.id = h.site_id
         where s.customer_id = ? order by h.site_id, h.weekday, h.opens
        """;

    /** With its first span, however long ago that was. */
    private static final String POINTS = """
        select d.site_id, d.id, d.name, d.place,
               least(d.created_at, (select min(p.from_at) from span p where p.device_id = d.id)) as since
          from device d join site s on s.id = d.site_id
         where s.customer_id = ? and d.kind = 'ACCESS_POINT'
        """;

    private final Rows rows;

    public SitePeriods(DataSource database) {
        this.rows = new Rows(database, "the sites of a report");
    }

    /**
     * A site with its service hours.
     *
     * @param time when it needs its Wi-Fi
     */
    public record Open(SitePeriod site, ServiceTime time) {}

    private record Hours(long siteId, ServiceHours hours) {}

    private record Placed(long siteId, Point point) {}

    private record Row(long id, String name, String town, ZoneId zone, double target, Instant created) {}

    /** By name; sites that came after the stretch are left out. Three statements. */
    public List<Open> of(ReportSubject subject, Instant asOf) {
        Bounds bounds = new Bounds(subject, asOf);
        Map<Long, List<ServiceHours>> hours = rows.list(HOURS, SitePeriods::hours, subject.customerId()).stream()
                .collect(Collectors.groupingBy(Hours::siteId, Collectors.mapping(Hours::hours, Collectors.toList())));
        Map<Long, List<Point>> points = rows.list(POINTS, SitePeriods::point, subject.customerId()).stream()
                .collect(Collectors.groupingBy(Placed::siteId, Collectors.mapping(Placed::point, Collectors.toList())));
        return rows.list(SITES, SitePeriods::row, subject.customerId()).stream()
                .sorted(Comparator.comparing(Row::name, String.CASE_INSENSITIVE_ORDER)
                        .thenComparing(Row::id))
                .flatMap(row -> period(row, bounds, points.getOrDefault(row.id(), List.of())).stream())
                .map(site -> new Open(site, new ServiceTime(site.zone(), hours.getOrDefault(site.siteId(), List.of()))))
                .toList();
    }

    private static Optional<SitePeriod> period(Row row, Bounds bounds, List<Point> all) {
        Instant to = bounds.to(row.zone());
        List<Point> points = all.stream()
                .filter(point -> point.since().isBefore(to))
                .sorted(Comparator.comparing(Point::device, String.CASE_INSENSITIVE_ORDER)
                        .thenComparing(Point::deviceId))
                .toList();
        return points.isEmpty() && !row.created().isBefore(to)
                ? Optional.empty()
                : Optional.of(new SitePeriod(
                        row.id(),
                        row.name(),
                        row.town(),
                        row.zone(),
                        row.target(),
                        bounds.from(row.zone()),
                        to,
                        points));
    }

    private static Hours hours(ResultSet row) throws SQLException {
        return new Hours(
                row.getLong("site_id"),
                new ServiceHours(
                        row.getInt("weekday"),
                        row.getObject("opens", LocalTime.class),
                        row.getObject("closes", LocalTime.class)));
    }

    private static Placed point(ResultSet row) throws SQLException {
        return new Placed(
                row.getLong("site_id"),
                new Point(
                        row.getLong("id"),
                        row.getString("name"),
                        row.getString("place"),
                        Rows.instant(row, "since").orElseThrow()));
    }

    private static Row row(ResultSet row) throws SQLException {
        return new Row(
                row.getLong("id"),
                row.getString("name"),
                row.getString("town"),
                ZoneId.of(row.getString("time_zone")),
                row.getDouble("availability_target"),
                Rows.instant(row, "created_at").orElseThrow());
    }
}
