package org.roundsman.fleet;

import jakarta.persistence.Embeddable;
import java.time.LocalTime;

/** One stretch of service hours on one weekday. */
@Embeddable
public class ServiceHours {
    /** ISO 8601: 1 = Monday to 7 = Sunday. */
    public short weekday;

    public LocalTime opens;

    /** Midnight (00:00) is the end of the day. */
    public LocalTime closes;

    protected ServiceHours() {}

    /**
     * @param weekday 1 = Monday to 7 = Sunday
     * @param closes later than {@code opens}, or 00:00 for the end of the day
     */
    public ServiceHours(int weekday, LocalTime opens, LocalTime closes) {
        this.weekday = (short) weekday;
        this.opens = opens;
        this.closes = closes;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ServiceHours that
                && weekday == that.weekday
                && opens.equals(that.opens)
                && closes.equals(that.closes);
    }

    @Override
    public int hashCode() {
        return weekday * 31 + opens.hashCode();
    }
}
