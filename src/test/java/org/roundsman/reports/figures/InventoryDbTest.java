package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.reports.Equipment;
import org.roundsman.reports.Equipment.Ending;
import org.roundsman.reports.Equipment.Runs;
import org.roundsman.reports.ReportSubject;
import org.roundsman.testing.TestDatabase;

/** Last days are a purchase and its months by the calendar, worked out by hand. */
class InventoryDbTest {

    private static final Instant AS_OF = Instant.parse("2026-11-01T05:00:00Z");
    private static final String TR22 = "Tamarack Radio TR-22";

    private Inventory inventory;
    private ReadingsFixture fleet;
    private long customer;
    private long canal;
    private long line;

    @BeforeEach
    void aCustomer() {
        var database = TestDatabase.fresh("inventory");
        fleet = new ReadingsFixture(database);
        inventory = new Inventory(database);
        customer = fleet.customer("Pebblegate Dental");
        canal = fleet.site(customer, "Canal Bridge", "Europe/London");
        line = fleet.id("insert into firmware_line (name) values ('Tamarack indoor') returning id");
        fleet.run(
                "insert into firmware_release (line_id, version, stand, reason, withdrawn_on) values"
                        + " (?, '6.4.2', 'RECOMMENDED', '', null), (?, '6.1.0', 'WITHDRAWN', 'restarts', '2026-09-01')",
                line,
                line);
    }

    private ReportSubject october() {
        return ReportSubject.of(customer, "Pebblegate Dental", YearMonth.of(2026, 10));
    }

    /** With 36 months from the purchase. @param price such as {@code 189.90, 'GBP'} or {@code null, ''} */
    private long model(String name, String price) {
        return fleet.id("insert into model (maker, name, kind, firmware_line_id, terms_kind, terms_from, terms_months,"
                + " list_price, currency) values ('Tamarack Radio', '" + name + "', 'ACCESS_POINT', " + line
                + ", 'MONTHS', 'PURCHASE', 36, " + price + ") returning id");
    }

    /** Sold until mid-2022, covered for five years after, and past the maker's support since mid-2025. */
    private long oldModel() {
        return fleet.id("insert into model (maker, name, kind, list_price, currency, terms_kind, terms_months,"
                + " end_of_sale, end_of_support) values ('Tamarack Radio', 'TR-10', 'ACCESS_POINT', 99, 'USD',"
                + " 'LIFETIME_AFTER_SALE', 60, '2022-06-30', '2025-06-30') returning id");
    }

    private long device(long site, String name, long model, String version, String bought) {
        long id = fleet.accessPoint(site, name);
        fleet.run("update device set model_id = ? where id = ?", model, id);
        fleet.run(
                "insert into device_fact (device_id, fact, value, since) values (?, 'SERIAL', ?, '2024-01-01 00:00+00')",
                id,
                "S-" + name);
        if (!version.isEmpty()) {
            fleet.run(
                    "insert into device_fact (device_id, fact, value, since) values (?, 'FIRMWARE', ?,"
                            + " '2026-01-01 00:00+00')",
                    id,
                    version);
        }
        if (!bought.isEmpty()) {
            fleet.run(
                    "insert into purchase (customer_id, serial, bought_on) values ((select customer_id from site where id"
                            + " = ?), ?, ?)",
                    site,
                    "S-" + name,
                    LocalDate.parse(bought));
        }
        return id;
    }

    @Test
    void firmwareIsCountedByStateAndByWhatRuns() {
        long usual = model("TR-22", "189.90, 'GBP'");
        device(canal, "ap-1", usual, "6.4.2", "");
        device(canal, "ap-2", usual, "6.1.0", "");
        device(canal, "ap-3", usual, "6.3.0", "");
        device(canal, "ap-4", usual, "6.3.0", "");
        device(canal, "ap-5", oldModel(), "5.8.1", "");
        fleet.device(canal, "switch", "NETWORK_SWITCH");
        long stranger = fleet.site(fleet.customer("Saltmarsh Ferry Line"), "South pier", "Europe/London");
        device(stranger, "mast", usual, "6.1.0", "");
        Equipment equipment = inventory.of(customer, october(), AS_OF);
        assertThat(equipment.devices()).isEqualTo(6);
        assertThat(equipment.firmware())
                .containsExactlyInAnyOrderEntriesOf(Map.of("CURRENT", 1, "WITHDRAWN", 1, "BEHIND", 2, "NOT_KNOWN", 2));
        assertThat(equipment.versions())
                .containsExactly(
                        new Runs("", "", 1, Map.of("NOT_KNOWN", 1)),
                        new Runs("Tamarack Radio TR-10", "5.8.1", 1, Map.of("NOT_KNOWN", 1)),
                        new Runs(TR22, "6.1.0", 1, Map.of("WITHDRAWN", 1)),
                        new Runs(TR22, "6.3.0", 2, Map.of("BEHIND", 2)),
                        new Runs(TR22, "6.4.2", 1, Map.of("CURRENT", 1)));
        assertThat(equipment.pastSupport()).isEqualTo(1);
    }

    @Test
    void coverThatEndsIsToldForSixMonthsFromTheEndOfTheStretch() {
        long usual = model("TR-22", "189.90, 'GBP'");
        long market = fleet.site(customer, "Market Row", "Europe/London");
        device(canal, "first", usual, "", "2023-11-01");
        device(canal, "too-early", usual, "", "2023-10-31");
        device(canal, "last", usual, "", "2024-04-30");
        device(canal, "too-late", usual, "", "2024-05-01");
        device(market, "Alike", usual, "", "2024-04-30");
        device(market, "unpriced", model("TR-50X", "null, ''"), "", "2023-12-15");
        device(canal, "undated", usual, "", "");
        fleet.run("insert into purchase (customer_id, serial, bought_on) values (?, 'spare', '2024-01-01')", customer);
        Equipment equipment = inventory.of(customer, october(), AS_OF);
        assertThat(equipment.ending())
                .containsExactly(
                        new Ending("Canal Bridge", "first", TR22, "S-first", LocalDate.of(2026, 11, 1)),
                        new Ending(
                                "Market Row",
                                "unpriced",
                                "Tamarack Radio TR-50X",
                                "S-unpriced",
                                LocalDate.of(2026, 12, 15)),
                        new Ending("Canal Bridge", "last", TR22, "S-last", LocalDate.of(2027, 4, 30)),
                        new Ending("Market Row", "Alike", TR22, "S-Alike", LocalDate.of(2027, 4, 30)));
        // three of 189.90
        assertThat(equipment.endingCost()).isEqualTo(Map.of("GBP", new BigDecimal("569.70")));
        assertThat(equipment.unpriced()).isEqualTo(1);
        // from 1 November to 30 April are 180 days
        assertThat(equipment.warranty())
                .hasToString("{COVERED=1, ENDED=1, ENDS_WITHIN_180=2, ENDS_WITHIN_30=1, ENDS_WITHIN_60=1, MISSING=1}");
    }

    @Test
    void theSameMomentGivesTheSameAndALaterOneWhatHoldsThen() {
        device(canal, "ap-1", model("TR-22", "189.90, 'GBP'"), "6.4.2", "2023-11-01");
        Equipment equipment = inventory.of(customer, october(), AS_OF);
        assertThat(inventory.of(customer, october(), AS_OF)).isEqualTo(equipment);
        assertThat(equipment.warranty()).isEqualTo(Map.of("ENDS_WITHIN_30", 1));
        Equipment later = inventory.of(customer, october(), AS_OF.plusSeconds(86_400));
        assertThat(later.warranty()).isEqualTo(Map.of("ENDED", 1));
        assertThat(later.ending()).isEqualTo(equipment.ending());
    }

    @Test
    void costsAreListPrices() {
        long priced = device(canal, "ap-1", model("TR-22", "189.90, 'GBP'"), "", "");
        device(canal, "ap-2", model("TR-50X", "null, ''"), "", "");
        long old = device(canal, "ap-3", oldModel(), "", "");
        device(canal, "ap-4", fleet.id("select id from model where name = 'TR-10'"), "", "");
        Costs costs = inventory.costs(customer, AS_OF);
        assertThat(costs.devices()).hasSize(3);
        assertThat(costs.ofDevice(priced)).isEqualTo(Map.of("GBP", new BigDecimal("189.90")));
        assertThat(costs.ofDevice(old)).isEqualTo(Map.of("USD", new BigDecimal("99.00")));
        assertThat(costs.ofDevice(999_999)).isEmpty();
        assertThat(costs.pastSupport()).isEqualTo(Map.of("USD", new BigDecimal("198.00")));
    }
}
