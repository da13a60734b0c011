package org.roundsman.web.triage;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.Resource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Devices;
import org.roundsman.readings.FleetBoard;
import org.roundsman.readings.Ribbon;
import org.roundsman.triage.Impacts;
import org.roundsman.triage.MonthSoFar;
import org.roundsman.web.chart.RibbonPicture;
import org.roundsman.web.page.Words;

/** What stands around an alarm: the day of its device or site, the device to ask, the site's month. */
@ApplicationScoped
class Surroundings {

    private final FleetBoard fleet;
    private final Devices devices;
    private final Impacts impacts;

    Surroundings(FleetBoard fleet, Devices devices, Impacts impacts) {
        this.fleet = fleet;
        this.devices = devices;
        this.impacts = impacts;
    }

    /**
     * The last 24 hours.
     *
     * @param of whose
     * @param picture as SVG
     */
    record Day(String of, String picture) {

        static Day of(String name, Ribbon ribbon, OpenAlarm alarm) {
            return new Day(
                    name, RibbonPicture.of(ribbon, "day", name, alarm.zone()).toString());
        }
    }

    /** Of the device, or of the whole site where the whole site is concerned; empty for the service itself. */
    Optional<Day> day(CustomerScope scope, OpenAlarm alarm) {
        Resource resource = alarm.key().resource();
        return switch (resource.kind()) {
            case DEVICE -> fleet.device(scope, resource.id()).map(row -> Day.of(row.name(), row.ribbon(), alarm));
            case SITE -> fleet.site(scope, resource.id()).map(row -> Day.of(row.site(), row.ribbon(), alarm));
            case SERVICE -> Optional.empty();
        };
    }

    /** The device to poll: the device itself; of a whole site its gateway, which comes before everything else. */
    Optional<Device> toAsk(CustomerScope scope, OpenAlarm alarm) {
        Resource resource = alarm.key().resource();
        return switch (resource.kind()) {
            case DEVICE -> devices.find(scope, resource.id());
            case SITE ->
                devices.ofSite(scope, resource.id()).stream()
                        .filter(device -> device.kind == DeviceKind.GATEWAY)
                        .findFirst();
            case SERVICE -> Optional.empty();
        };
    }

    /** How the alarm's site stands against its target this month, in words; empty where nothing is known. */
    String month(OpenAlarm alarm, Instant now) {
        return alarm.siteId().isEmpty()
                ? ""
                : impacts.month(alarm.siteId().getAsLong(), now)
                        .filter(month -> month.share().isPresent())
                        .map(Surroundings::words)
                        .orElse("");
    }

    /** {@code 99.91 % available so far, target 99.5 %; the site may still be down for 2 h 10 min}. */
    static String words(MonthSoFar month) {
        Duration left = month.left();
        String rest = left.isNegative() || left.isZero()
                ? "the target is missed by " + Words.length(left.negated())
                : "the site may still be down for " + Words.length(left) + " of its service hours";
        return Words.figure(month.share().getAsDouble() * 100, 2, "%") + " available so far, target "
                + Words.figure(month.target(), 2, "%") + "; " + rest;
    }
}
