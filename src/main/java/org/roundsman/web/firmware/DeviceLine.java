package org.roundsman.web.firmware;

import org.roundsman.firmware.FirmwareState;
import org.roundsman.web.fleet.Flag;

/** The firmware of one device as a list shows it. */
record DeviceLine(
        long id,
        String device,
        long siteId,
        String site,
        String customer,
        String model,
        String line,
        String version,
        String since,
        Flag status,
        String reason,
        String flags,
        String behind) {

    static DeviceLine of(FirmwareState state) {
        return new DeviceLine(
                state.deviceId(),
                state.device(),
                state.place().siteId(),
                state.place().site(),
                state.place().customer(),
                FirmwareWords.or(state.place().model(), "model not known"),
                state.place().line(),
                FirmwareWords.or(state.version(), "no version read"),
                FirmwareWords.day(state.since(), state.place().zone()),
                Flag.of(state.status(), ""),
                state.reason(),
                FirmwareWords.flags(state),
                FirmwareWords.days(state.daysBehind()));
    }
}
