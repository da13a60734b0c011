package org.roundsman.web.site;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.SiteRow;
import org.roundsman.shared.Page;
import org.roundsman.web.fleet.DeviceLine;
import org.roundsman.web.fleet.FlagPair;
import org.roundsman.web.fleet.SiteLine;
import org.roundsman.web.page.Words;

/**
 * What changes on a site's page.
 *
 * @param more what is left out of the list, or empty
 */
record SiteView(SiteLine line, String behind, List<DeviceLine> devices, String more) {

    static SiteView of(SiteRow row, Page<DeviceRow> devices, Map<Long, FlagPair> flags, String behind, Instant now) {
        long left = devices.total() - devices.items().size();
        return new SiteView(
                SiteLine.of(row, FlagPair.NONE, now),
                behind,
                devices.items().stream()
                        .map(device -> DeviceLine.of(device, flags.getOrDefault(device.deviceId(), FlagPair.NONE), now))
                        .toList(),
                left <= 0 ? "" : Words.many(left, "more device is", "more devices are") + " left out here.");
    }
}
