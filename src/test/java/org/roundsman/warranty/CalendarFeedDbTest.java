package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VAlarm;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.validate.ValidationResult;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.testing.TestDatabase;

/** The calendar against ical4j 4.4.0, a reader of another project, in its strict mode; and against RFC 5545. */
class CalendarFeedDbTest {

    private static final Instant NOW = Instant.parse("2026-11-26T11:00:00.789Z");
    private static final CustomerScope ALL = CustomerScope.everyone();

    private CoverHouse house;
    private javax.sql.DataSource database;
    private final TurnedClock clock = new TurnedClock();

    private static final class TurnedClock extends Clock {
        private Instant now = NOW;

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    /** Two customers with 60 access points whose cover ends on days of the next year, twenty of them on one day. */
    @BeforeEach
    void aFleet() {
        database = TestDatabase.fresh("cover_calendar");
        house = new CoverHouse(database);
        house.models();
        house.customer(1, "Saltmarsh Ferry Line; Nord, Süd");
        house.customer(2, "Übersee-Fähren 渡船 \\ Söhne");
        house.site(11, 1, "Pier „Möwe“", "Europe/Berlin");
        house.site(12, 2, "桟橋", "Asia/Tokyo");
        for (int n = 1; n <= 60; n++) {
            house.device(n, 11 + n % 2, "ap-ünder-dem-Dach-" + n, 1L, "TR-" + n);
            LocalDate last = LocalDate.parse("2026-11-26").plusDays(n <= 20 ? 40 : n * 5L);
            house.bought(1 + n % 2, "TR-" + n, last.minusMonths(36).toString());
        }
    }

    private byte[] feed(CustomerScope scope) {
        return new CalendarFeed(null, new Warranties(database, clock), database, clock).of(scope);
    }

    private static Calendar read(byte[] feed) throws Exception {
        return new CalendarBuilder().build(new ByteArrayInputStream(feed));
    }

    private static List<VEvent> events(Calendar calendar) {
        return calendar.getComponents(Component.VEVENT);
    }

    private static String value(VEvent event, String property) {
        Property found = event.getProperty(property)
                .map(Property.class::cast)
                .orElseThrow(() -> new AssertionError(property + " is missing"));
        return found.getValue();
    }

    @Test
    void aStrictReaderFindsNoFault() throws Exception {
        Calendar calendar = read(feed(ALL));
        ValidationResult result = calendar.validate(true);
        assertThat(result.hasErrors()).as(result.toString()).isFalse();
        for (VEvent event : events(calendar)) {
            assertThat(event.validate(true).hasErrors()).isFalse();
            assertThat(event.getAlarms()).hasSize(2).allSatisfy(alarm -> {
                assertThat(alarm.validate(true).hasErrors()).isFalse();
                assertThat(action(alarm)).isEqualTo("DISPLAY");
            });
            assertThat(event.getAlarms()).extracting(alarm -> trigger(alarm)).containsExactly("-P90D", "-P30D");
        }
    }

    private static String action(VAlarm alarm) {
        return alarm.getProperty(Property.ACTION)
                .map(p -> ((Property) p).getValue())
                .orElseThrow();
    }

    private static String trigger(VAlarm alarm) {
        return alarm.getProperty(Property.TRIGGER)
                .map(p -> ((Property) p).getValue())
                .orElseThrow();
    }

    @Test
    void aYearHasEveryExpiryExactlyOnce() throws Exception {
        Map<String, LocalDate> found = new TreeMap<>();
        for (VEvent event : events(read(feed(ALL)))) {
            LocalDate day =
                    LocalDate.parse(value(event, Property.DTSTART), java.time.format.DateTimeFormatter.BASIC_ISO_DATE);
            assertThat(value(event, Property.DTEND))
                    .isEqualTo(day.plusDays(1).format(java.time.format.DateTimeFormatter.BASIC_ISO_DATE));
            for (String line : value(event, Property.DESCRIPTION).split("\n")) {
                if (line.contains("serial ")) {
                    String serial = line.replaceAll("^.*serial ([^,]+),.*$", "$1");
                    assertThat(found.put(serial, day)).as(serial).isNull();
                }
            }
        }
        Map<String, LocalDate> wanted = new TreeMap<>();
        new Warranties(database, clock)
                .all(ALL)
                .forEach(one -> wanted.put(one.serial(), one.lastDay().orElseThrow()));
        assertThat(found).isEqualTo(wanted).hasSize(60);
    }

    @Test
    void oneEventADayAndCustomerAndNoPrices() throws Exception {
        byte[] feed = feed(ALL);
        List<VEvent> events = events(read(feed));
        assertThat(events)
                .as("40 days of one unit, and one day of two customers")
                .hasSize(42);
        assertThat(events.stream().map(one -> value(one, Property.UID)).distinct())
                .hasSize(42);
        assertThat(events.stream().map(one -> value(one, Property.SUMMARY)))
                .contains(
                        "Warranty ends: 10 access points, Saltmarsh Ferry Line; Nord, Süd",
                        "Warranty ends: 10 access points, Übersee-Fähren 渡船 \\ Söhne");
        assertThat(new String(feed, StandardCharsets.UTF_8))
                .doesNotContain("189")
                .doesNotContain("EUR");
        assertThat(events(read(feed(CustomerScope.of(2))))).hasSize(21);
    }

    /** RFC 5545, 3.1. */
    @Test
    void linesEndInCrLfAndNoneIsOver75Octets() {
        byte[] feed = feed(ALL);
        int length = 0;
        for (int i = 0; i < feed.length; i++) {
            if (feed[i] == '\r') {
                assertThat(feed[i + 1]).isEqualTo((byte) '\n');
                assertThat(length).isLessThanOrEqualTo(75);
                length = 0;
                i++;
            } else {
                assertThat(feed[i]).isNotEqualTo((byte) '\n');
                length++;
            }
        }
        for (String line : new String(feed, StandardCharsets.UTF_8).split("\r\n")) {
            byte[] octets = line.getBytes(StandardCharsets.UTF_8);
            assertThat(new String(octets, StandardCharsets.UTF_8))
                    .isEqualTo(line)
                    .doesNotContain("\uFFFD");
        }
        assertThat(new String(feed, StandardCharsets.UTF_8))
                .startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Roundsman//")
                .endsWith("END:VCALENDAR\r\n");
    }

    /** RFC 5545, 3.8.7: UID stays, SEQUENCE and LAST-MODIFIED rise when an event changes; DTSTAMP is UTC. */
    @Test
    void whatChangedIsToldAndWhatDidNotStays() throws Exception {
        byte[] first = feed(ALL);
        clock.now = NOW.plus(Duration.ofHours(1));
        assertThat(feed(ALL)).as("the same content is the same octets").isEqualTo(first);
        Map<String, VEvent> before = byUid(first);
        house.put("update device set name = 'renamed' where id = 60");
        clock.now = NOW.plus(Duration.ofHours(2));
        Map<String, VEvent> after = byUid(feed(ALL));
        assertThat(after.keySet()).isEqualTo(before.keySet());
        List<String> changed = new ArrayList<>();
        after.forEach((uid, event) -> {
            if (!value(event, Property.SEQUENCE).equals("0")) {
                changed.add(uid);
                assertThat(value(event, Property.SEQUENCE)).isEqualTo("1");
                assertThat(value(event, Property.DESCRIPTION)).contains("renamed");
                assertThat(value(event, Property.LAST_MODIFIED)).isEqualTo("20261126T130000Z");
                assertThat(value(event, Property.DTSTAMP)).isEqualTo("20261126T130000Z");
            } else {
                assertThat(value(event, Property.LAST_MODIFIED)).isEqualTo("20261126T110000Z");
            }
        });
        assertThat(changed).hasSize(1);
    }

    private Map<String, VEvent> byUid(byte[] feed) throws Exception {
        Map<String, VEvent> found = new HashMap<>();
        events(read(feed)).forEach(event -> found.put(value(event, Property.UID), event));
        return found;
    }
}
