package org.roundsman.web.device;

import java.time.ZoneId;
import java.util.List;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.web.page.Words;

/**
 * One event as it is shown.
 *
 * @param change whether there is a value before or after
 */
record HappenedLine(
        String at, String kind, String title, boolean change, String old, String fresh, List<String> detail) {

    static HappenedLine of(DeviceEvent event, ZoneId zone) {
        return new HappenedLine(
                Words.second(event.at(), zone),
                event.kind().one(),
                event.title(),
                !event.old().isEmpty() || !event.fresh().isEmpty(),
                event.old().isEmpty() ? "nothing" : event.old(),
                event.fresh().isEmpty() ? "nothing" : event.fresh(),
                event.detail().lines().toList());
    }
}
