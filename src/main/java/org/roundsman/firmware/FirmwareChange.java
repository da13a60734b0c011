package org.roundsman.firmware;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A change of firmware that a device was seen to make.
 *
 * @param place where the device stands now
 * @param at when the other version was first read
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
        Optional<Instant> restartedAt,
        Optional<Instant> comparedAt,
        boolean settled,
        List<FigureChange> figures) {

    public FirmwareChange {
        figures = List.copyOf(figures);
    }
}
