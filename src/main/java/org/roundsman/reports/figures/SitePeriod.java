package org.roundsman.reports.figures;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/**
 * One site, and the stretch of a report by its clock.
 *
 * @param town or empty
 * @param target for how much of its service hours its Wi-Fi was to be there, in percent
 * @param to end, exclusive; equal to {@code from} where the stretch lies in the future
 * @param points its access points that were there before the end, by name
 */
public record SitePeriod(
        long siteId,
        String site,
        String town,
        ZoneId zone,
        double target,
        Instant from,
        Instant to,
        List<Point> points) {

    public SitePeriod {
        points = List.copyOf(points);
    }

    /**
     * One access point.
     *
     * @param place where it is, or empty
     * @param since when it came into the fleet
     */
    public record Point(long deviceId, String device, String place, Instant since) {

        /** From when on it counts in a stretch that begins there. */
        Instant from(Instant begin) {
            return since.isAfter(begin) ? since : begin;
        }
    }
}
