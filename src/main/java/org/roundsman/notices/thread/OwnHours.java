package org.roundsman.notices.thread;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.roundsman.fleet.HoursText;
import org.roundsman.fleet.ServiceHours;

/** Weekly hours on the clock of a place; none at all means around the clock. A clock set back shows an hour twice: both count. */
public record OwnHours(ZoneId zone, List<ServiceHours> stretches) {

    private static final int DAYS_AHEAD = 8;

    public OwnHours {
        stretches = List.copyOf(stretches);
    }

    /**
     * @throws IllegalArgumentException naming the line that cannot be read
     */
    public static OwnHours of(ZoneId zone, String lines) {
        return new OwnHours(zone, HoursText.read(lines));
    }

    public boolean contain(Instant at) {
        if (stretches.isEmpty()) {
            return true;
        }
        ZonedDateTime local = at.atZone(zone);
        int weekday = local.getDayOfWeek().getValue();
        LocalTime time = local.toLocalTime();
        return stretches.stream()
                .filter(stretch -> stretch.weekday == weekday)
                .anyMatch(stretch -> !time.isBefore(stretch.opens)
                        && (stretch.closes.equals(LocalTime.MIDNIGHT) || time.isBefore(stretch.closes)));
    }

    /** That time, or the first one after it that lies within the hours. */
    public Instant next(Instant at) {
        if (contain(at)) {
            return at;
        }
        LocalDate today = at.atZone(zone).toLocalDate();
        Instant first = null;
        for (int ahead = 0; ahead <= DAYS_AHEAD; ahead++) {
            LocalDate day = today.plusDays(ahead);
            for (ServiceHours stretch : stretches) {
                Instant opens = day.atTime(stretch.opens).atZone(zone).toInstant();
                boolean fits =
                        stretch.weekday == day.getDayOfWeek().getValue() && !opens.isBefore(at) && contain(opens);
                if (fits && (first == null || opens.isBefore(first))) {
                    first = opens;
                }
            }
        }
        return first == null ? at : first;
    }
}
