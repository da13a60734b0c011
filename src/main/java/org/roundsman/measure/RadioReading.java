package org.roundsman.measure;

/**
 * One radio in one reading.
 *
 * @param number the radio's number on its device, 1 to 32767
 * @param values figures of {@link Subject#RADIO}
 */
public record RadioReading(int number, Values values) {}
