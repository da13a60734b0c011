package org.roundsman.demo.model;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.SiteKind;

/**
 * The local hours in which a crowded room is crowded.
 *
 * @param from first hour of the day
 * @param to hour at which it ends
 * @param weekend whether also on Saturdays and Sundays
 */
record LocalHours(ZoneId zone, int from, int to, boolean weekend) {

    static LocalHours of(DemoSite site) {
        boolean hotel = site.kind() == SiteKind.HOTEL;
        return hotel ? new LocalHours(site.zone(), 18, 23, true) : new LocalHours(site.zone(), 9, 15, false);
    }

    boolean hold(long epochMilli) {
        ZonedDateTime local = Instant.ofEpochMilli(epochMilli).atZone(zone);
        boolean day = weekend || local.getDayOfWeek().getValue() <= 5;
        return day && local.getHour() >= from && local.getHour() < to;
    }
}
