package org.roundsman.reports.figures;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;

/**
 * What devices cost at the list price of their model, without tax, by ISO 4217 code.
 *
 * @param devices one more of each device, by device; those without a list price are left out
 * @param pastSupport all devices whose maker gives no help any more, as far as they have a list price
 */
public record Costs(Map<Long, SortedMap<String, BigDecimal>> devices, SortedMap<String, BigDecimal> pastSupport) {

    SortedMap<String, BigDecimal> ofDevice(long deviceId) {
        return devices.getOrDefault(deviceId, Collections.emptySortedMap());
    }
}
