package org.roundsman.notices;

import java.time.ZoneId;
import java.util.EnumSet;
import java.util.Set;
import org.roundsman.alarms.Severity;

/**
 * What a person chose to be told.
 *
 * @param mail whether mails go to them
 * @param mailAddress where to; may be empty while {@code mail} is false
 * @param severity from this one
 * @param events which of them
 * @param everyCustomer of all customers, whoever comes later included
 * @param customers of these alone, where not of all
 * @param zone whose clock the hours and the digest follow
 * @param hours lines such as {@code Mon-Fri 08:00-18:00}; empty for around the clock
 * @param digestHour 0 to 23
 * @param digestWeekday of a weekly digest: 1 = Monday to 7 = Sunday
 */
public record NoticeChoices(
        boolean mail,
        String mailAddress,
        Severity severity,
        Set<NoticeEvent> events,
        boolean everyCustomer,
        Set<Long> customers,
        ZoneId zone,
        String hours,
        Digest digest,
        int digestHour,
        int digestWeekday) {

    public NoticeChoices {
        events = Set.copyOf(events);
        customers = Set.copyOf(customers);
    }

    /** What holds for somebody who has chosen nothing: nothing is sent. */
    public static NoticeChoices untouched() {
        return new NoticeChoices(
                false,
                "",
                Severity.MAJOR,
                EnumSet.allOf(NoticeEvent.class),
                true,
                Set.of(),
                ZoneId.of("UTC"),
                "",
                Digest.NONE,
                7,
                1);
    }
}
