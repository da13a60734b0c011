package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.testing.TestDatabase;

/** What the pages ask, of 20,000 access points. Prints how long it took, and holds nobody to it. */
class LargeFleetDbTest {

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-26T12:00:00Z"), ZoneOffset.UTC);
    private static final CustomerScope ALL = CustomerScope.everyone();

    private static DataSource database;
    private static Warranties warranties;

    @BeforeAll
    static void load() {
        database = TestDatabase.fresh("cover_large");
        new CoverHouse(database).large();
        warranties = new Warranties(database, CLOCK);
    }

    private static <T> T timed(String what, java.util.function.Supplier<T> work) {
        work.get();
        long begin = System.nanoTime();
        T made = work.get();
        System.out.println(
                what + ": " + Duration.ofNanos(System.nanoTime() - begin).toMillis() + " ms");
        return made;
    }

    @Test
    void theYearOfAllIsWorkedOutOfAHandfulOfQuestions() {
        List<UnitCover> all = timed("20,000 units with their cover", () -> warranties.all(ALL));
        assertThat(all).hasSize(20_000);
        YearAhead year =
                timed("the year ahead of them", () -> YearAhead.of(all, YearAhead.first(all, LocalDate.now(CLOCK))));
        int months = year.months().stream().mapToInt(one -> one.cost().units()).sum();
        assertThat(months
                        + year.ended().units()
                        + year.missing().units()
                        + year.later().units()
                        + year.open().units())
                .isEqualTo(20_000);
        assertThat(year.customers()).hasSize(40);
        assertThat(year.customers().stream().mapToInt(YearAhead.Share::units).sum())
                .isEqualTo(20_000);
        assertThat(year.months()).allMatch(one -> one.cost().units() > 0);
    }

    /** The database's own arithmetic: date + interval '36 months', in an SQL question of its own. */
    @Test
    void theDatabaseReckonsTheSameDays() throws Exception {
        Map<Long, LocalDate> ours = warranties.all(ALL).stream()
                .filter(one -> one.modelId().orElse(0) == 1 && one.deviceId().orElseThrow() % 10 != 1)
                .filter(one -> one.lastDay().isPresent())
                .collect(Collectors.toMap(one -> one.deviceId().orElseThrow(), one -> one.lastDay()
                        .orElseThrow()));
        assertThat(ours).hasSizeGreaterThan(5_000);
        int seen = 0;
        try (var connection = database.getConnection();
                var statement = connection.createStatement();
                var row = statement.executeQuery(
                        "select d.id, (p.bought_on + interval '36 months')::date from device d join site s on s.id ="
                                + " d.site_id join purchase p on p.customer_id = s.customer_id and lower(p.serial) = 'tr-'"
                                + " || d.id where d.model_id = 1 and d.id % 10 <> 1")) {
            while (row.next()) {
                assertThat(ours.get(row.getLong(1))).isEqualTo(row.getObject(2, LocalDate.class));
                seen++;
            }
        }
        assertThat(seen).isEqualTo(ours.size());
    }

    @Test
    void aPageOfDevicesAndOneDeviceAskLittle() {
        List<Long> page = LongStream.rangeClosed(1, 50).boxed().toList();
        Map<Long, UnitCover> some = timed("50 devices of a page", () -> warranties.of(ALL, page));
        assertThat(some).hasSize(50);
        assertThat(timed("one device", () -> warranties.ofDevice(ALL, 777))).isPresent();
        assertThat(timed("one customer's", () -> warranties.all(CustomerScope.of(3))))
                .hasSize(500);
        assertThat(timed(
                        "those that ended or miss something",
                        () -> warranties.with(ALL, EnumSet.of(CoverStatus.ENDED, CoverStatus.MISSING))))
                .hasSizeBetween(5_000, 19_999);
    }

    @Test
    void whatIsAskedOfAFewIsTheSameAsOfAll() {
        Map<Long, UnitCover> all = warranties.all(ALL).stream()
                .collect(Collectors.toMap(one -> one.deviceId().orElseThrow(), one -> one));
        List<Long> some = LongStream.rangeClosed(1, 400).boxed().toList();
        warranties.of(ALL, some).forEach((id, cover) -> assertThat(cover).isEqualTo(all.get(id)));
    }

    @Test
    void theCalendarOfAllNamesEveryUnitThatEndsInTime() {
        CalendarFeed feed = new CalendarFeed(null, warranties, database, CLOCK);
        byte[] text = timed("the calendar of all customers", () -> feed.of(ALL));
        System.out.println("it takes " + text.length / 1024 + " KB");
        assertThat(text.length).isGreaterThan(100_000);
    }
}
