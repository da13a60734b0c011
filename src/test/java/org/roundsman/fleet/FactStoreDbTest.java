package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.FactStore.Radio;
import org.roundsman.fleet.FactStore.Said;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.testing.TestDatabase;

/** What changes about a device is an event, and nothing else is: rules of our own, see {@link FactStore}. */
class FactStoreDbTest {

    private static final Instant START = Instant.parse("2026-11-25T08:00:00Z");
    private static final Map<String, String> FACTS = Map.of("SERIAL", "TR-0001", "FIRMWARE", "4.1", "MODEL", "TR-22");
    private static final List<Radio> RADIOS =
            List.of(new Radio(1, "2.4 GHz", "00:00:5e:00:53:01"), new Radio(2, "5 GHz", "00:00:5e:00:53:02"));
    private static final List<String> SSIDS = List.of("Staff", "Guests");

    private static DataSource database;
    private static ReadingsFixture fixture;
    private static int number;

    private final FactStore store = new FactStore();
    private long customer;
    private long site;
    private long device;

    @BeforeAll
    static void migrate() {
        database = TestDatabase.fresh("fact_store");
        fixture = new ReadingsFixture(database);
    }

    @BeforeEach
    void aDevice() {
        customer = fixture.customer("Pebblegate Dental " + ++number);
        site = fixture.site(customer, "Clinic", "Europe/Berlin");
        device = fixture.accessPoint(site, "ap-" + number);
    }

    private void read(int hour, Map<String, String> facts, List<Radio> radios, List<String> ssids) throws SQLException {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            store.store(connection, device, site, START.plusSeconds(3600L * hour), new Said(facts, radios, ssids));
            connection.commit();
        }
    }

    private List<List<Object>> events() {
        return fixture.rows(
                "select title, old_value, new_value from device_event where device_id = ? and title <> 'First read'"
                        + " order by at, id",
                device);
    }

    private static Map<String, String> with(String fact, String value) {
        Map<String, String> facts = new java.util.TreeMap<>(FACTS);
        facts.put(fact, value);
        return facts;
    }

    private static Map<String, String> without(String fact) {
        Map<String, String> facts = new java.util.TreeMap<>(FACTS);
        facts.remove(fact);
        return facts;
    }

    @Test
    void theFirstReadIsOneEventAndTheSameAgainIsNone() throws SQLException {
        read(0, FACTS, RADIOS, SSIDS);
        read(1, FACTS, RADIOS, SSIDS);
        assertThat(fixture.rows("select title, new_value from device_event where device_id = ?", device))
                .containsExactly(List.of("First read", "model TR-22, serial number TR-0001, firmware 4.1"));
    }

    @Test
    void eachChangedFactIsAnEventWithOldAndNewValueAndTime() throws SQLException {
        read(0, FACTS, RADIOS, SSIDS);
        read(1, with("FIRMWARE", "4.2"), RADIOS, SSIDS);
        assertThat(events()).containsExactly(List.of("Firmware changed", "4.1", "4.2"));
        assertThat(fixture.rows(
                        "select at at time zone 'UTC' = '2026-11-25 09:00', kind from device_event"
                                + " where device_id = ? and title = 'Firmware changed'",
                        device))
                .containsExactly(List.of(true, "FACT_CHANGED"));
    }

    @Test
    void aFactThatIsMissingOnceIsNoChange() throws SQLException {
        read(0, FACTS, RADIOS, SSIDS);
        read(1, without("FIRMWARE"), RADIOS, SSIDS);
        read(2, FACTS, RADIOS, SSIDS);
        read(3, without("FIRMWARE"), RADIOS, SSIDS);
        assertThat(events()).isEmpty();
        read(4, without("FIRMWARE"), RADIOS, SSIDS);
        assertThat(events()).containsExactly(List.of("Firmware is no longer told", "4.1", ""));
        read(5, FACTS, RADIOS, SSIDS);
        assertThat(events()).hasSize(2).last().isEqualTo(List.of("Firmware is told", "", "4.1"));
    }

    @Test
    void networksAppearAndDisappear() throws SQLException {
        read(0, FACTS, RADIOS, SSIDS);
        read(1, FACTS, RADIOS, List.of("Staff", "Lobby"));
        assertThat(events()).containsExactly(List.of("Network appeared", "", "Lobby"));
        read(2, FACTS, RADIOS, List.of("Staff", "Lobby"));
        assertThat(events()).hasSize(2).last().isEqualTo(List.of("Network disappeared", "Guests", ""));
        read(3, FACTS, RADIOS, List.of("Staff", "Lobby"));
        assertThat(events()).hasSize(2);
    }

    @Test
    void radiosAppearDisappearAndChangeNameOrAddress() throws SQLException {
        read(0, FACTS, RADIOS, SSIDS);
        Radio renamed = new Radio(1, "2.4 GHz indoor", "00:00:5e:00:53:01");
        Radio other = new Radio(2, "5 GHz", "00:00:5e:00:53:12");
        read(1, FACTS, List.of(renamed, other, new Radio(3, "6 GHz", "00:00:5e:00:53:03")), SSIDS);
        assertThat(events())
                .containsExactly(
                        List.of("Radio 1: name changed", "2.4 GHz", "2.4 GHz indoor"),
                        List.of("Radio 2: MAC address changed", "00:00:5e:00:53:02", "00:00:5e:00:53:12"),
                        List.of("Radio 3 appeared", "", "6 GHz 00:00:5e:00:53:03"));
        read(2, FACTS, List.of(renamed, other), SSIDS);
        assertThat(events()).hasSize(3);
        read(3, FACTS, List.of(renamed, other), SSIDS);
        assertThat(events()).hasSize(4).last().isEqualTo(List.of("Radio 3 disappeared", "6 GHz 00:00:5e:00:53:03", ""));
        assertThat(fixture.rows("select number from radio where device_id = ? order by 1", device))
                .hasSize(2);
    }

    @Test
    void whatComesLateChangesNothingAndIsNoEvent() throws SQLException {
        read(0, FACTS, RADIOS, SSIDS);
        read(5, with("FIRMWARE", "4.2"), RADIOS, SSIDS);
        read(3, with("FIRMWARE", "4.1.9"), List.of(), List.of());
        read(4, with("SERIAL", "TR-9999"), List.of(), List.of());
        assertThat(events()).containsExactly(List.of("Firmware changed", "4.1", "4.2"));
        assertThat(fixture.rows("select value from device_fact where device_id = ? and fact = 'FIRMWARE'", device))
                .containsExactly(List.of("4.2"));
        assertThat(fixture.ids("select missing from radio where device_id = ?", device))
                .containsOnly(0L);
    }

    @Test
    void aTransactionThatIsRolledBackLeavesNoEvent() throws SQLException {
        read(0, FACTS, RADIOS, SSIDS);
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            store.store(connection, device, site, START.plusSeconds(60), new Said(with("SERIAL", "X"), RADIOS, SSIDS));
            connection.rollback();
        }
        assertThat(events()).isEmpty();
    }

    /** What was known before changes were kept is compared as well, and its networks are no news. */
    @Test
    void aDeviceThatWasKnownBeforeStartsWithoutAFlood() throws SQLException {
        fixture.run(
                "insert into device_fact values (?, 'SERIAL', 'TR-0001', now()), (?, 'FIRMWARE', '3.9', now())",
                device,
                device);
        read(0, FACTS, RADIOS, SSIDS);
        assertThat(fixture.rows("select title, old_value, new_value from device_event where device_id = ?", device))
                .containsExactly(List.of("Firmware changed", "3.9", "4.1"));
    }

    @Test
    void aDeviceThatMovesToAnotherSiteKeepsItsNetworks() throws SQLException {
        read(0, FACTS, RADIOS, SSIDS);
        site = fixture.site(customer, "Other clinic", "Europe/Berlin");
        read(1, FACTS, RADIOS, SSIDS);
        read(2, FACTS, RADIOS, SSIDS);
        assertThat(events()).isEmpty();
    }
}
