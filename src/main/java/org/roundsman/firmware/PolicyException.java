package org.roundsman.firmware;

import java.time.Instant;
import java.time.LocalDate;

/**
 * A customer's devices may run something else for a while.
 *
 * @param version the release that they may run; empty for whatever runs there
 * @param lastDay the last day on which it holds, by the clock of each site
 */
public record PolicyException(
        long id,
        long lineId,
        long customerId,
        String customer,
        String version,
        String reason,
        LocalDate lastDay,
        String madeBy,
        Instant madeAt) {}
