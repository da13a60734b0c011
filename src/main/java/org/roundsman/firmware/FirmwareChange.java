package org.roundsman.firmware;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A change of firmware that was seen in the place of a device.
 *
 * @param place where the device stands now
 * @param at when the other version was first read
 * @param otherUnit with it came another serial number: a unit took the place of another one and nothing was upgraded; empty
 *     where the unit stayed, or tells no serial number
 * @param restartedAt the restart about the same time; empty when none was seen
 * @param comparedAt when the figures were last worked out; empty until two days have passed
 * @param settled the figures change no more
 * @param figures empty where there was nothing to compare
 */
public record FirmwareChange(
        long id,
        long deviceId,
        String device,
        FirmwarePlace place,
        Instant at,
        String old,
        String fresh,
        Optional<OtherUnit> otherUnit,
        Optional<Instant> restartedAt,
        Optional<Instant> comparedAt,
        boolean settled,
        List<FigureChange> figures) {

    /** The serial numbers of the unit that stood there and of the one that does now. */
    public record OtherUnit(String oldSerial, String newSerial) {}

    public FirmwareChange {
        figures = List.copyOf(figures);
    }
}
