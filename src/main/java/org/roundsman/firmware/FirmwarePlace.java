package org.roundsman.firmware;

import java.time.ZoneId;
import java.util.OptionalLong;

/**
 * Where a device stands and what it is.
 *
 * @param model maker and name, or empty where the model is not known
 * @param line name of its line of firmware, or empty where it has none
 */
public record FirmwarePlace(
        long customerId,
        String customer,
        long siteId,
        String site,
        ZoneId zone,
        OptionalLong modelId,
        String model,
        OptionalLong lineId,
        String line) {}
