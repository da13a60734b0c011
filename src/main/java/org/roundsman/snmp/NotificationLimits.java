package org.roundsman.snmp;

/**
 * How many messages of one address are looked at; the others are only counted.
 *
 * @param burst so many at once
 * @param perSecond so many a second in the long run
 */
public record NotificationLimits(int burst, int perSecond) {

    public NotificationLimits {
        if (burst < 1 || perSecond < 1) {
            throw new IllegalArgumentException("a burst of " + burst + " and " + perSecond + " a second");
        }
    }
}
