package org.roundsman.reports;

import java.time.Duration;
import java.util.OptionalDouble;

/**
 * The channel of one radio over the stretch of a report.
 *
 * @param band 2.4, 5 or 6 GHz; empty where it was not read
 * @param utilisation 95th percentile of its 15-minute means in percent (Hyndman-Fan type 7); empty when nothing was measured
 * @param mean of the 15-minute means in percent
 * @param busy time in which the 15-minute mean lay over 70 %
 * @param quarters quarter hours with a figure
 * @param expected quarter hours of the stretch, from when the access point came into the fleet
 * @param clients 95th percentile of the 15-minute means of its clients
 */
public record RadioFigures(
        long siteId,
        String site,
        long deviceId,
        String device,
        String place,
        int number,
        OptionalDouble band,
        OptionalDouble utilisation,
        OptionalDouble mean,
        Duration busy,
        int quarters,
        int expected,
        OptionalDouble clients) {

    /** Over this the channel counts as busy, in percent (common practice, no source). */
    public static final double BUSY = 70;
}
