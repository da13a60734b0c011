package org.roundsman.reports;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What we advise, with the figures that it rests on.
 *
 * @param site where, or empty when it concerns several
 * @param what the device, place or model that it is about, or empty
 * @param count how many outages, devices or units it rests on
 * @param figure in percent, where there is one
 * @param time that it rests on, where there is one
 * @param day the first day that matters, where there is one
 * @param cost at list price by ISO 4217 code; empty where it is not known
 */
public record Recommendation(
        Kind kind,
        String site,
        String what,
        int count,
        OptionalDouble figure,
        Duration time,
        Optional<LocalDate> day,
        SortedMap<String, BigDecimal> cost) {

    Recommendation withoutCost() {
        return new Recommendation(kind, site, what, count, figure, time, day, new TreeMap<>());
    }

    /** What to do, the most urgent first. The name is what reports store; never renamed. */
    public enum Kind {
        /** Two outages of the uplink or more, or more time lost to it than the target allows. */
        LOOK_AT_LINE,
        /** An access point is often or long away by itself. */
        LOOK_AT_DEVICE,
        /** Three access points of a site or more are. */
        LOOK_AT_DEVICES,
        /** Devices run firmware that should not run. */
        UPGRADE_WITHDRAWN,
        /** A channel is busy for much of the time: another access point, or another channel. */
        ADD_ACCESS_POINT,
        /** Devices whose maker gives no help any more. */
        REPLACE_PAST_SUPPORT,
        /** Cover that ends within six months. */
        RENEW_COVER,
        /** Devices run older firmware than they should. */
        UPGRADE_BEHIND,
        /** We were looking for less than 95 % of the time. */
        MEND_OUR_VIEW
    }
}
