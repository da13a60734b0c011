package org.roundsman.firmware;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.fleet.DeviceKind;

/**
 * How the firmware of one device stands at a moment.
 *
 * @param version as the device tells it, or empty where none was read
 * @param since when that version was first read; empty where none was
 * @param reason of the status, in words
 * @param security whether it lacks a security fix: then it counts as withdrawn, unless excepted
 * @param target the release that is to run there, or empty where none is decided that may run
 * @param onTarget whether what runs is that release, however it is written
 * @param daysBehind days since the release that is to run came out, when what runs is older; empty where that is not known
 * @param mixed whether devices of the same line at the site run another release
 */
public record FirmwareState(
        long deviceId,
        String device,
        DeviceKind kind,
        FirmwareStatus status,
        String version,
        Optional<Instant> since,
        String reason,
        boolean security,
        String target,
        boolean onTarget,
        OptionalLong daysBehind,
        boolean mixed,
        FirmwarePlace place) {

    FirmwareState mixed(boolean others) {
        return new FirmwareState(
                deviceId,
                device,
                kind,
                status,
                version,
                since,
                reason,
                security,
                target,
                onTarget,
                daysBehind,
                others,
                place);
    }
}
