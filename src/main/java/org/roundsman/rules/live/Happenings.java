package org.roundsman.rules.live;

import java.util.List;
import java.util.Optional;
import org.roundsman.alarms.AlarmType;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;

/** Which events of a device's timeline rules count, and as what. */
public final class Happenings {

    /** The sorts of events that may count. */
    public static final List<EventKind> KINDS =
            List.of(EventKind.RESTARTED, EventKind.FACT_CHANGED, EventKind.NETWORK_CHANGED, EventKind.RADIO_CHANGED);

    /** The rules that count events. */
    public static final List<AlarmType> TYPES = List.of(AlarmType.DEVICE_RESTARTED, AlarmType.CONFIGURATION_CHANGED);

    private static final String FIRMWARE = "Firmware changed";

    private Happenings() {}

    /** The rule that counts this event; of facts only another firmware counts. */
    public static Optional<AlarmType> counted(DeviceEvent event) {
        return switch (event.kind()) {
            case RESTARTED -> Optional.of(AlarmType.DEVICE_RESTARTED);
            case NETWORK_CHANGED, RADIO_CHANGED -> Optional.of(AlarmType.CONFIGURATION_CHANGED);
            case FACT_CHANGED ->
                event.title().equals(FIRMWARE) ? Optional.of(AlarmType.CONFIGURATION_CHANGED) : Optional.empty();
            default -> Optional.empty();
        };
    }

    /** The event in a sentence. */
    public static String words(DeviceEvent event) {
        if (event.old().isEmpty() && event.fresh().isEmpty()) {
            return event.title() + ".";
        }
        if (event.old().isEmpty() || event.fresh().isEmpty()) {
            return event.title() + ": " + event.old() + event.fresh() + ".";
        }
        String between = event.kind() == EventKind.RESTARTED ? ", " : " → ";
        return event.title() + ": " + event.old() + between + event.fresh() + ".";
    }
}
