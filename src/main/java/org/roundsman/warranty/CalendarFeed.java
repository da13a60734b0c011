package org.roundsman.warranty;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.warranty.store.CalendarTable;
import org.roundsman.warranty.store.CalendarTable.Day;
import org.roundsman.warranty.store.CalendarTable.Told;

/**
 * The calendar of what ends when, as an iCalendar object (RFC 5545): one event per customer and day, with alarms 90 and 30
 * days ahead. An event keeps its UID; SEQUENCE and LAST-MODIFIED rise when its words change. Without METHOD, DTSTAMP is when
 * the event changed last (3.8.7.2), so that the same content is the same octets.
 */
@ApplicationScoped
public class CalendarFeed {

    /** Days back that are still told, so that what ended lately does not vanish at once. */
    static final int DAYS_BACK = 31;

    /** Months ahead that are told. */
    static final int MONTHS_AHEAD = 24;

    private static final List<String> ALARMS = List.of("-P90D", "-P30D");

    private final CalendarAddresses addresses;
    private final Warranties warranties;
    private final CalendarTable table;
    private final Clock clock;

    @Inject
    CalendarFeed(CalendarAddresses addresses, Warranties warranties, DataSource database, Clock clock) {
        this.addresses = addresses;
        this.warranties = warranties;
        this.table = new CalendarTable(database);
        this.clock = clock;
    }

    /** The calendar at the address of that secret, in UTF-8; empty when the address is not good. */
    @Transactional
    public Optional<byte[]> read(String secret) {
        return addresses.open(secret).map(this::of);
    }

    /** The calendar of those customers. */
    @Transactional
    byte[] of(CustomerScope scope) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        LocalDate today = now.atOffset(ZoneOffset.UTC).toLocalDate();
        List<CalendarEvent> events =
                CalendarEvent.of(warranties.all(scope), today.minusDays(DAYS_BACK), today.plusMonths(MONTHS_AHEAD));
        Map<Day, String> digests = new LinkedHashMap<>();
        events.forEach(event -> digests.put(day(event), digest(event)));
        Map<Day, Told> told = table.tell(digests, now);
        IcsText text = new IcsText()
                .line("BEGIN:VCALENDAR")
                .line("VERSION:2.0")
                .line("PRODID:-//Roundsman//Warranty calendar 1//EN")
                .line("CALSCALE:GREGORIAN");
        events.forEach(event -> add(text, event, told.get(day(event))));
        return text.line("END:VCALENDAR").octets();
    }

    private static Day day(CalendarEvent event) {
        return new Day(event.customerId(), event.day());
    }

    private static void add(IcsText text, CalendarEvent event, Told told) {
        text.line("BEGIN:VEVENT")
                .line("UID:" + told.uid())
                .moment("DTSTAMP", told.changedAt())
                .moment("LAST-MODIFIED", told.changedAt())
                .line("SEQUENCE:" + told.sequence())
                .day("DTSTART", event.day())
                .day("DTEND", event.day().plusDays(1))
                .line("TRANSP:TRANSPARENT")
                .text("SUMMARY", event.summary())
                .text("DESCRIPTION", event.description());
        for (String before : ALARMS) {
            text.line("BEGIN:VALARM")
                    .line("ACTION:DISPLAY")
                    .line("TRIGGER:" + before)
                    .text("DESCRIPTION", event.summary())
                    .line("END:VALARM");
        }
        text.line("END:VEVENT");
    }

    private static String digest(CalendarEvent event) {
        try {
            byte[] words = (event.summary() + "\n" + event.description()).getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(words));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java platform has SHA-256
        }
    }
}
