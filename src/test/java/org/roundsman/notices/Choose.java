package org.roundsman.notices;

import java.util.Set;
import org.roundsman.alarms.Severity;

/** Choices with one thing changed. */
final class Choose {

    private Choose() {}

    static NoticeChoices from(NoticeChoices c, Severity severity) {
        return new NoticeChoices(
                c.mail(),
                c.mailAddress(),
                severity,
                c.events(),
                c.everyCustomer(),
                c.customers(),
                c.zone(),
                c.hours(),
                c.digest(),
                c.digestHour(),
                c.digestWeekday());
    }

    static NoticeChoices customers(NoticeChoices c, Set<Long> customers) {
        return new NoticeChoices(
                c.mail(),
                c.mailAddress(),
                c.severity(),
                c.events(),
                false,
                customers,
                c.zone(),
                c.hours(),
                c.digest(),
                c.digestHour(),
                c.digestWeekday());
    }

    static NoticeChoices events(NoticeChoices c, Set<NoticeEvent> events) {
        return new NoticeChoices(
                c.mail(),
                c.mailAddress(),
                c.severity(),
                events,
                c.everyCustomer(),
                c.customers(),
                c.zone(),
                c.hours(),
                c.digest(),
                c.digestHour(),
                c.digestWeekday());
    }

    static NoticeChoices hours(NoticeChoices c, String hours) {
        return new NoticeChoices(
                c.mail(),
                c.mailAddress(),
                c.severity(),
                c.events(),
                c.everyCustomer(),
                c.customers(),
                c.zone(),
                hours,
                c.digest(),
                c.digestHour(),
                c.digestWeekday());
    }

    static NoticeChoices digest(NoticeChoices c, Digest digest, int hour, int weekday) {
        return new NoticeChoices(
                c.mail(),
                c.mailAddress(),
                c.severity(),
                c.events(),
                c.everyCustomer(),
                c.customers(),
                c.zone(),
                c.hours(),
                digest,
                hour,
                weekday);
    }
}
