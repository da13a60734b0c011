package org.roundsman.polling;

import java.time.Duration;

/**
 * Bounds of the rounds.
 *
 * @param inFlightPerSite rounds at one site at a time; a round has one request in flight
 * @param inFlight rounds in all at a time
 * @param longestBackOff the longest time between two rounds of a silent device
 */
public record RoundsSettings(int inFlightPerSite, int inFlight, Duration longestBackOff) {

    public static RoundsSettings defaults() {
        return new RoundsSettings(8, 1000, Duration.ofMinutes(5));
    }
}
