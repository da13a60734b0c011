package org.roundsman.triage.watch;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.readings.DeviceState;
import org.roundsman.triage.DeviceLook;
import org.roundsman.triage.store.Fleet;

/** All that one pass knows of the fleet. */
record Moment(
        Tools tools,
        Fleet fleet,
        Map<Long, DeviceState> states,
        Map<Long, DeviceLook> looks,
        Map<AlarmKey, OpenAlarm> active,
        Severities severities,
        Instant now) {

    Optional<OpenAlarm> alarm(AlarmKey key) {
        return Optional.ofNullable(active.get(key));
    }

    Optional<DeviceLook> look(long deviceId) {
        return Optional.ofNullable(looks.get(deviceId));
    }
}
