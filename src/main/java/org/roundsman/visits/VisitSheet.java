package org.roundsman.visits;

import java.time.Instant;
import java.util.List;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Site;

/**
 * What somebody must know and bring who drives to a site because of an alarm.
 *
 * @param made when this was gathered
 * @param alarm why to drive
 * @param site with its hours and contacts
 * @param units the devices to look at, first of all the one that is the cause
 * @param others more devices that are concerned, without details
 * @param more how many of those are left out
 * @param bring one thing a line
 * @param cautions what can hurt
 * @param done what people did so far, the oldest first
 */
public record VisitSheet(
        Instant made,
        OpenAlarm alarm,
        Site site,
        List<Unit> units,
        List<Device> others,
        int more,
        List<String> bring,
        List<String> cautions,
        List<AlarmAct> done) {}
