package org.roundsman.triage.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.triage.store.Fleet;

/**
 * The last restart that an alarm of restarts tells of, as far as it says: while it is as mild as can be, the one that raised it;
 * else the one that made it more severe. Of other alarms, what raised them.
 *
 * @param began not later than it restarted
 * @param known when it came to light
 * @param until so long more may come to light of it: what it hangs on is asked in the meantime
 * @param again whether restarts before it were told already
 */
record Restart(Instant began, Instant known, Instant until, boolean again) {

    private static final Duration PATIENCE = Duration.ofSeconds(15);

    static Restart of(OpenAlarm alarm, Moment moment) {
        Optional<Fleet.Device> device = Optional.ofNullable(
                moment.fleet().devices().get(alarm.key().resource().id()));
        Duration interval = device.map(Fleet.Device::interval).orElse(Duration.ZERO);
        boolean again = alarm.changed().isAfter(alarm.raised())
                && device.filter(known -> worse(alarm, known, moment)).isPresent();
        Instant known = again ? alarm.changed() : alarm.raised();
        Instant began = again ? known.minus(interval) : alarm.began();
        return new Restart(began, known, known.plus(interval).plus(PATIENCE), again);
    }

    /** Than the mildest that its rule has: then the number of restarts grew. */
    private static boolean worse(OpenAlarm alarm, Fleet.Device device, Moment moment) {
        return alarm.key().type() == AlarmType.DEVICE_RESTARTED
                && moment.severities()
                        .mildest(AlarmType.DEVICE_RESTARTED, moment.fleet().target(device))
                        .filter(mildest -> !mildest.atLeast(alarm.severity()))
                        .isPresent();
    }
}
