package org.roundsman.firmware;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.fleet.DeviceKind;

/**
 * What a device runs.
 *
 * @param version as the device tells it, or empty where none was read
 * @param since when that version was first read
 * @param otherKind its model is one of another kind of device
 */
public record Running(
        long deviceId,
        String device,
        DeviceKind kind,
        String version,
        Optional<Instant> since,
        boolean otherKind,
        FirmwarePlace place) {}
