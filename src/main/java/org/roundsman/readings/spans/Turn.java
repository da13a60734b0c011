package org.roundsman.readings.spans;

import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;

/**
 * From {@code at} on, the device is in that condition; whatever was said of the time from there on before is void.
 *
 * @param outcome what the first round of the new span met, null when unwatched
 */
public record Turn(long at, Condition condition, Outcome outcome) {}
