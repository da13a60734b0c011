package org.roundsman.readings;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;

/**
 * One device on the fleet view or on its site's page.
 *
 * @param place room, ceiling or mast, or empty
 * @param condition as of now: a device whose next round is long overdue is unwatched
 * @param since start of that condition, empty before the first round
 * @param outcome of the last round, empty before the first round
 * @param model what the device or its entry says, or empty
 * @param firmware what the device says, or empty
 * @param clients empty when not measured or not answering
 * @param uptime seconds, empty when not measured
 */
public record DeviceRow(
        long deviceId,
        String name,
        DeviceKind kind,
        String place,
        String host,
        long siteId,
        String site,
        long customerId,
        String customer,
        String timeZone,
        Condition condition,
        Optional<Instant> since,
        Optional<Instant> lastAnswered,
        Optional<Outcome> outcome,
        boolean paused,
        String model,
        String firmware,
        OptionalInt clients,
        OptionalDouble uptime,
        Optional<BusiestRadio> busiest,
        Ribbon ribbon) {

    /** The same with another ribbon. */
    public DeviceRow with(Ribbon with) {
        return new DeviceRow(
                deviceId,
                name,
                kind,
                place,
                host,
                siteId,
                site,
                customerId,
                customer,
                timeZone,
                condition,
                since,
                lastAnswered,
                outcome,
                paused,
                model,
                firmware,
                clients,
                uptime,
                busiest,
                with);
    }
}
