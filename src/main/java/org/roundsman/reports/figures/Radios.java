package org.roundsman.reports.figures;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.sql.DataSource;
import org.roundsman.readings.PastRadios;
import org.roundsman.reports.RadioFigures;
import org.roundsman.reports.figures.SitePeriod.Point;

/** How busy the channels of access points were. Thread-safe. */
public final class Radios {

    private final PastRadios past;

    public Radios(DataSource source) {
        this.past = new PastRadios(source);
    }

    /**
     * Every radio that has figures or is known, by site and access point as they are given and by number. Quarter hours are
     * expected from when the access point came into the fleet.
     */
    public List<RadioFigures> of(List<SitePeriod> sites) {
        return sites.stream().flatMap(site -> ofSite(site).stream()).toList();
    }

    private List<RadioFigures> ofSite(SitePeriod site) {
        List<Long> devices = site.points().stream().map(Point::deviceId).toList();
        Map<Long, SortedMap<Integer, ChannelFigures>> measured = new HashMap<>();
        past.each(devices, site.from(), site.to(), (device, number, utilisation, clients) -> measured.computeIfAbsent(
                        device, made -> new TreeMap<>())
                .put(number, ChannelFigures.of(utilisation, clients)));
        Map<Long, SortedMap<Integer, OptionalDouble>> known = past.known(devices);
        List<RadioFigures> radios = new ArrayList<>();
        for (Point point : site.points()) {
            SortedMap<Integer, OptionalDouble> bands = known.getOrDefault(point.deviceId(), new TreeMap<>());
            SortedMap<Integer, ChannelFigures> own = measured.getOrDefault(point.deviceId(), new TreeMap<>());
            TreeSet<Integer> numbers = new TreeSet<>(bands.keySet());
            numbers.addAll(own.keySet());
            for (int number : numbers) {
                radios.add(radio(
                        site,
                        point,
                        number,
                        bands.getOrDefault(number, OptionalDouble.empty()),
                        own.getOrDefault(number, ChannelFigures.NONE)));
            }
        }
        return radios;
    }

    private static RadioFigures radio(
            SitePeriod site, Point point, int number, OptionalDouble band, ChannelFigures figures) {
        return new RadioFigures(
                site.siteId(),
                site.site(),
                point.deviceId(),
                point.device(),
                point.place(),
                number,
                band,
                figures.utilisation(),
                figures.mean(),
                figures.busy(),
                figures.quarters(),
                expected(point.from(site.from()), site.to()),
                figures.clients());
    }

    /** Begun quarter hours. */
    private static int expected(Instant from, Instant to) {
        double quarters = Duration.between(from, to).toMillis() / (double) ChannelFigures.QUARTER.toMillis();
        return (int) Math.max(0, Math.ceil(quarters));
    }
}
