package org.roundsman.measure;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What one round brought back. Device and time are its key: a second reading with the same key is the same reading.
 *
 * @param deviceId the device asked
 * @param at when the round began, whole milliseconds
 * @param outcome how it ended
 * @param nextInSeconds when the next round of this device is due, counted from {@code at}; a later next reading means
 *     that nobody was looking in between. At least 1
 * @param device figures of {@link Subject#DEVICE}
 * @param radios by radio number, ascending
 * @param networks by SSID, no repeats
 * @param facts empty unless the slow facts were read in this round
 */
public record Reading(
        long deviceId,
        Instant at,
        Outcome outcome,
        int nextInSeconds,
        Values device,
        List<RadioReading> radios,
        List<NetworkReading> networks,
        Optional<Facts> facts) {

    public Reading {
        at = Instant.ofEpochMilli(at.toEpochMilli());
        radios = List.copyOf(radios);
        networks = List.copyOf(networks);
        if (nextInSeconds < 1) {
            throw new IllegalArgumentException("next round in " + nextInSeconds + " s");
        }
    }

    /** A round that brought back nothing but its outcome. */
    public static Reading empty(long deviceId, Instant at, Outcome outcome, int nextInSeconds) {
        return new Reading(
                deviceId,
                at,
                outcome,
                nextInSeconds,
                Values.none(Subject.DEVICE),
                List.of(),
                List.of(),
                Optional.empty());
    }
}
