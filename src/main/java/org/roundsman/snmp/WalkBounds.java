package org.roundsman.snmp;

import java.time.Duration;

/**
 * How much of a device is read at most, and how gently.
 *
 * @param variables after so many, reading stops with a remark
 * @param pause between a reply and the next request
 */
public record WalkBounds(int variables, Duration pause) {

    public WalkBounds {
        if (variables < 1 || variables > Walk.MOST_VARIABLES) {
            throw new IllegalArgumentException("1 to " + Walk.MOST_VARIABLES + " variables, not " + variables);
        }
    }
}
