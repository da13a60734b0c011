package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.testing.TestDatabase;

/** Units that left the place where they stood: their model, their first day, and what became of them. */
class LeftPlaceDbTest {

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-26T12:00:00Z"), ZoneOffset.UTC);
    private static final CustomerScope ALL = CustomerScope.everyone();

    private CoverHouse house;
    private Warranties warranties;

    /** One access point of 36 months from purchase, which told TR-OLD, was replaced, and tells TR-NEW since 2024. */
    @BeforeEach
    void aSwap() {
        DataSource database = TestDatabase.fresh("cover_left");
        house = new CoverHouse(database);
        warranties = new Warranties(database, CLOCK);
        house.models();
        house.customer(1, "Saltmarsh Ferry Line");
        house.site(1, 1, "North pier", "Europe/Berlin");
        house.device(1, 1, "AP 1", 1L, "TR-NEW");
        house.bought(1, "tr-old", "2024-06-01");
        house.tell(
                "insert into unit (id, customer_id, serial, model_id, known_since) overriding system value values"
                        + " (1, 1, 'TR-OLD', 1, '2022-05-01Z'), (2, 1, 'TR-NEW', 1, '2021-01-01Z')",
                "insert into unit_stay (unit_id, customer_id, site_id, device_id, device_name, site_name, from_at, until_at,"
                        + " standing) values (1, 1, 1, 1, 'AP 1', 'North pier', '2022-05-01 12:00Z', '2024-01-01 12:00Z',"
                        + " 'READ'), (2, 1, 1, null, 'AP 9', 'North pier', '2021-01-01 12:00Z', '2021-02-01 12:00Z',"
                        + " 'ENTERED'), (2, 1, 1, null, 'AP 9', 'North pier', '2021-02-01 12:00Z', '2024-01-01 12:00Z',"
                        + " 'READ'), (2, 1, 1, 1, 'AP 1', 'North pier', '2024-01-01 12:00Z', null, 'READ')");
    }

    private UnitCover old() {
        return warranties.ofPurchase(ALL, 1).orElseThrow();
    }

    @Test
    void aUnitKeepsItsCoverWhenItLeavesItsPlace() {
        assertThat(old().deviceId()).isEmpty();
        assertThat(old().lastDay()).contains(LocalDate.parse("2027-06-01"));
        assertThat(warranties.all(ALL)).hasSize(2).contains(old());
        house.tell("update model set terms_from = 'FIRST_SEEN', terms_months = 60 where id = 1");
        assertThat(old().lastDay()).as("not since it lies in store").contains(LocalDate.parse("2027-05-01"));
    }

    @Test
    void whatWasScrappedIsInNoListAndKeepsItsPage() {
        house.tell("update unit set fate = 'SCRAPPED', fate_since = '2026-11-01 12:00Z' where id = 1");
        assertThat(warranties.all(ALL)).extracting(UnitCover::serial).containsExactly("TR-NEW");
        assertThat(old().lastDay()).contains(LocalDate.parse("2027-06-01"));
        assertThat(old().derivation())
                .contains(CoverStep.note("the unit was scrapped on 2026-11-01: it is left out of lists and sums"));
    }

    /** Read elsewhere since February 2021; that somebody entered January counts for nothing. */
    @Test
    void firstSeenDoesNotBeginAgainAtAnotherPlace() {
        house.tell("update model set terms_from = 'FIRST_SEEN', terms_months = 60 where id = 1");
        assertThat(warranties.ofDevice(ALL, 1).orElseThrow().lastDay()).contains(LocalDate.parse("2026-02-01"));
        house.tell("delete from unit_stay where standing = 'READ'");
        assertThat(warranties.ofDevice(ALL, 1).orElseThrow().lastDay())
                .as("since the device tells it, where no stay was read")
                .contains(LocalDate.parse("2029-01-01"));
    }
}
