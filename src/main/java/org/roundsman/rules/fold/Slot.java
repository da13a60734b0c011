package org.roundsman.rules.fold;

import java.util.Optional;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;

/**
 * What of a device a rule looks at.
 *
 * @param radio its number, 0 for the whole device
 * @param name the alarm's qualifier, such as an SSID; mostly empty
 */
record Slot(AlarmType type, int radio, String name) {

    private static final String RADIO = "radio ";

    static Slot device(AlarmType type) {
        return new Slot(type, 0, "");
    }

    /** The alarm's key; of the service itself where there is no device. */
    AlarmKey key(long deviceId) {
        if (deviceId == 0) {
            return new AlarmKey(type, Resource.service(), name);
        }
        Resource resource = radio == 0 ? Resource.device(deviceId) : Resource.radio(deviceId, radio);
        return new AlarmKey(type, resource, name);
    }

    /** The slot of an alarm that a rule raised; empty for a part that no rule knows. */
    static Optional<Slot> of(AlarmKey key) {
        String part = key.resource().part();
        if (part.isEmpty()) {
            return Optional.of(new Slot(key.type(), 0, key.qualifier()));
        }
        return part.matches(RADIO + "\\d{1,5}")
                ? Optional.of(new Slot(key.type(), Integer.parseInt(part.substring(RADIO.length())), key.qualifier()))
                : Optional.empty();
    }
}
