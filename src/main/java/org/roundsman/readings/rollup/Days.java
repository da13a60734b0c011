package org.roundsman.readings.rollup;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.roundsman.readings.sql.Sql;

/** The days of sites, in each site's own time zone: 23, 24 or 25 hours long. */
final class Days {

    /** One day of one site. */
    record SiteDay(long siteId, LocalDate day, ZoneId zone) {
        Instant from() {
            return day.atStartOfDay(zone).toInstant();
        }

        Instant to() {
            return day.plusDays(1).atStartOfDay(zone).toInstant();
        }
    }

    private Days() {}

    /** The site's zone; UTC when what stands there is none, since figures must go on. */
    static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException e) {
            return ZoneOffset.UTC;
        }
    }

    /** The time zone of every site. */
    static Map<Long, ZoneId> zones(Connection connection) throws SQLException {
        Map<Long, ZoneId> zones = new HashMap<>();
        try (var statement = connection.prepareStatement("select id, time_zone from site");
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                zones.put(row.getLong(1), zone(row.getString(2)));
            }
        }
        return zones;
    }

    /** The days that these quarter hours belong to. */
    static Set<SiteDay> of(Map<Long, ZoneId> zones, Collection<Instant> quarters) {
        Map<ZoneId, Set<LocalDate>> days = new HashMap<>();
        for (ZoneId zone : new HashSet<>(zones.values())) {
            Set<LocalDate> inZone = days.computeIfAbsent(zone, z -> new HashSet<>());
            quarters.forEach(quarter -> inZone.add(LocalDate.ofInstant(quarter, zone)));
        }
        Set<SiteDay> siteDays = new HashSet<>();
        zones.forEach((site, zone) -> days.get(zone).forEach(day -> siteDays.add(new SiteDay(site, day, zone))));
        return siteDays;
    }

    /** Builds the days anew from their quarters. */
    static void build(Connection connection, Collection<SiteDay> days) throws SQLException {
        if (days.isEmpty()) {
            return;
        }
        List<SiteDay> list = new ArrayList<>(days);
        var sites = Sql.ids(connection, list.stream().map(SiteDay::siteId).toList());
        var dates = connection.createArrayOf(
                "date", list.stream().map(day -> day.day().toString()).toArray());
        var starts = Sql.times(
                connection, list.stream().map(day -> day.from().toEpochMilli()).toList());
        var ends = Sql.times(
                connection, list.stream().map(day -> day.to().toEpochMilli()).toList());
        Instant first =
                list.stream().map(SiteDay::from).min(Comparator.naturalOrder()).get();
        Instant last =
                list.stream().map(SiteDay::to).max(Comparator.naturalOrder()).get();
        for (RolledTable table : RolledTable.values()) {
            Sql.run(connection, table.dayFromQuarters(), sites, dates, starts, ends, Sql.time(first), Sql.time(last));
        }
    }
}
