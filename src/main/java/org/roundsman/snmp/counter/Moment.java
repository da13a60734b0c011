package org.roundsman.snmp.counter;

/**
 * When something was sampled, on the device's own time line.
 *
 * @param seconds on a line that goes on evenly within one epoch
 * @param epoch changes whenever the line breaks, by a restart or because we cannot tell; samples of different epochs
 *     have no distance
 */
public record Moment(double seconds, int epoch) {}
