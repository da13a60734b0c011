package org.roundsman.web.notices;

import java.time.ZoneId;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.Digest;
import org.roundsman.notices.NoticeChoices;
import org.roundsman.notices.NoticeEvent;
import org.roundsman.notices.NoticeRejected;

/** What the form of a person's notices sent. */
record ChoiceForm(
        @RestForm String mail,
        @RestForm String mailAddress,
        @RestForm String severity,
        @RestForm List<String> events,
        @RestForm String every,
        @RestForm List<String> customers,
        @RestForm String zone,
        @RestForm String hours,
        @RestForm String digest,
        @RestForm String digestHour,
        @RestForm String digestWeekday) {

    static ChoiceForm of(NoticeChoices chosen) {
        return new ChoiceForm(
                chosen.mail() ? "yes" : "",
                chosen.mailAddress(),
                chosen.severity().word(),
                chosen.events().stream().map(NoticeEvent::word).toList(),
                chosen.everyCustomer() ? "yes" : "",
                chosen.customers().stream().map(String::valueOf).toList(),
                chosen.zone().getId(),
                chosen.hours(),
                chosen.digest().word(),
                String.valueOf(chosen.digestHour()),
                String.valueOf(chosen.digestWeekday()));
    }

    public boolean wants(NoticeEvent event) {
        return list(events).contains(event.word());
    }

    public boolean hearsOf(Long customer) {
        return list(customers).contains(String.valueOf(customer));
    }

    public boolean mails() {
        return "yes".equals(mail);
    }

    public boolean everyCustomer() {
        return "yes".equals(every);
    }

    /**
     * @throws NoticeRejected naming the fields that cannot be read
     */
    NoticeChoices choices() {
        Map<String, String> faults = new LinkedHashMap<>();
        Severity from = severity(text(severity), faults);
        Set<NoticeEvent> chosen = EnumSet.noneOf(NoticeEvent.class);
        list(events).forEach(word -> NoticeEvent.of(word).ifPresent(chosen::add));
        Set<Long> ids = new HashSet<>();
        list(customers).forEach(id -> ids.add((long) number(id, "customers", faults)));
        ZoneId clock = zone(text(zone), faults);
        Digest often = Digest.of(text(digest)).orElse(Digest.NONE);
        int hour = number(text(digestHour), "digestHour", faults);
        int day = number(text(digestWeekday), "digestWeekday", faults);
        if (!faults.isEmpty()) {
            throw new NoticeRejected(faults);
        }
        return new NoticeChoices(
                mails(), text(mailAddress), from, chosen, everyCustomer(), ids, clock, text(hours), often, hour, day);
    }

    private static Severity severity(String word, Map<String, String> faults) {
        return Arrays.stream(Severity.values())
                .filter(one -> one.word().equals(word.toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseGet(() -> {
                    faults.put("severity", "Choose from the list.");
                    return Severity.MAJOR;
                });
    }

    private static ZoneId zone(String name, Map<String, String> faults) {
        if (ZoneId.getAvailableZoneIds().contains(name)) {
            return ZoneId.of(name);
        }
        faults.put("zone", "There is no time zone of that name; write one like Europe/Berlin.");
        return ZoneId.of("UTC");
    }

    private static int number(String text, String field, Map<String, String> faults) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException e) {
            faults.put(field, "Choose from the list.");
            return 0;
        }
    }

    private static List<String> list(List<String> values) {
        return values == null ? List.of() : values;
    }

    private static String text(String value) {
        return value == null ? "" : value.strip();
    }
}
