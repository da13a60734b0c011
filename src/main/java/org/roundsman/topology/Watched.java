package org.roundsman.topology;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.fleet.DeviceKind;

/**
 * A device whose wiring is to be read.
 *
 * @param readAt its last full reading
 * @param offersLldp it did so at that reading
 */
record Watched(long deviceId, long siteId, DeviceKind kind, Optional<Instant> readAt, boolean offersLldp) {}
