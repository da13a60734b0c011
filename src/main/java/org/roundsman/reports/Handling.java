package org.roundsman.reports;

import java.time.Duration;
import java.util.Optional;
import java.util.SortedMap;

/**
 * Alarms that began in the stretch, and how they were dealt with. Those that another alarm explains count once, with it.
 *
 * @param alarms how many, without those in planned work
 * @param severities how many of them by their worst X.733 severity, by name; only those above zero
 * @param explained further alarms that these explain
 * @param planned further alarms in planned work
 * @param taken how many one of us acknowledged or took
 * @param cleared how many are over
 * @param toTake median time from the raise until one of us acknowledged or took it
 * @param toClear median time from the raise until it was over
 * @param longest longest time until one was over
 */
public record Handling(
        int alarms,
        SortedMap<String, Integer> severities,
        int explained,
        int planned,
        int taken,
        int cleared,
        Optional<Duration> toTake,
        Optional<Duration> toClear,
        Optional<Duration> longest) {}
