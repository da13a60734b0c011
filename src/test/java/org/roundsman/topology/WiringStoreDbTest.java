package org.roundsman.topology;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.TableReading;
import org.roundsman.testing.TestDatabase;
import org.roundsman.topology.store.WiringRows;
import org.roundsman.topology.store.WordRows;
import org.roundsman.topology.store.Work;

/** What readings leave in the database, and what is made of it, with a real PostgreSQL. */
class WiringStoreDbTest {

    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");
    private static final String GATEWAY = "00:00:5e:00:53:01";
    private static final String CORE = "00:00:5e:00:53:02";
    private static final String FLOOR = "00:00:5e:00:53:03";
    private static final String LOBBY = "00:00:5e:00:53:11";

    private DataSource database;
    private WiringStore store;
    private long site;
    private long gateway;
    private long core;
    private long floor;
    private long lobby;
    private long attic;

    @BeforeEach
    void site() {
        database = TestDatabase.fresh("wiring");
        store = new WiringStore(database, new TestSettings(), Clock.systemUTC());
        long customer = id("insert into customer (name) values ('Quillfeather') returning id");
        site = id("insert into site (customer_id, name, time_zone) values (" + customer
                + ", 'North Building', 'Europe/London') returning id");
        id("insert into credential (name, version, community) values ('keys', 2, '\\x00') returning id");
        gateway = device("GATEWAY", "gw");
        core = device("NETWORK_SWITCH", "sw-core");
        floor = device("NETWORK_SWITCH", "sw-floor");
        lobby = device("ACCESS_POINT", "ap-lobby");
        attic = device("ACCESS_POINT", "ap-attic");
    }

    private long device(String kind, String name) {
        return id("insert into device (site_id, kind, name, host, credential_id) select " + site + ", '" + kind + "', '"
                + name + "', '" + name + ".example', id from credential returning id");
    }

    private long id(String sql) {
        return rows(sql).get(0).isEmpty() ? 0 : Long.parseLong(rows.get(0));
    }

    private final List<String> rows = new ArrayList<>();

    private List<String> rows(String sql) {
        rows.clear();
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet found = statement.executeQuery(sql)) {
            while (found.next()) {
                rows.add(found.getString(1));
            }
            return rows;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private void full(long device, TableFixture tables, DeviceKind kind, Instant at) {
        store.full(device, site, tables.reading(kind, at));
    }

    private static TableFixture coreSwitch() {
        return TableFixture.aSwitch(CORE, 24).hears(24, GATEWAY, "gw").hears(1, FLOOR, "sw-floor");
    }

    private static TableFixture floorSwitch() {
        return TableFixture.aSwitch(FLOOR, 24)
                .hears(24, CORE, "sw-core")
                .hears(7, LOBBY, "ap-lobby")
                .power(7, 3, 5);
    }

    private void everything(Instant at) {
        full(gateway, TableFixture.aSwitch(GATEWAY, 2).hears(1, CORE, "sw-core"), DeviceKind.GATEWAY, at);
        full(core, coreSwitch(), DeviceKind.NETWORK_SWITCH, at);
        full(floor, floorSwitch(), DeviceKind.NETWORK_SWITCH, at);
        full(lobby, new TableFixture().mac(TableFixture.IF + "6.1", LOBBY), DeviceKind.ACCESS_POINT, at);
        store.workOut(site);
    }

    private SiteWiring wiring() {
        return Work.ask(database, connection -> WiringRows.of(connection, site));
    }

    private TreeNode node(long device) {
        return wiring().tree().node(device).orElseThrow();
    }

    @Test
    void theTreeLeadsFromAnAccessPointUpToTheGateway() {
        everything(NOON);
        List<TreeNode> path = wiring().tree().pathUp(lobby);
        assertThat(path).extracting(TreeNode::name).containsExactly("ap-lobby", "sw-floor", "sw-core", "gw");
        assertThat(path.get(0).port().orElseThrow().title()).isEqualTo("port 7");
        assertThat(path.get(0).port().orElseThrow().power().orElseThrow().words())
                .isEqualTo("power delivered, class 4");
        assertThat(wiring().tree().below(core)).extracting(TreeNode::name).containsExactly("sw-floor", "ap-lobby");
        assertThat(wiring().tree().unknown()).extracting(TreeNode::name).containsExactly("ap-attic");
        assertThat(rows("select kind from device_event")).isEmpty();
    }

    @Test
    void aMoveIsAnEventOfTheDevice() {
        everything(NOON);
        TableFixture moved =
                TableFixture.aSwitch(FLOOR, 24).hears(24, CORE, "sw-core").hears(9, LOBBY, "ap-lobby");
        full(floor, moved, DeviceKind.NETWORK_SWITCH, NOON.plusSeconds(900));
        assertThat(node(lobby).place().portTitle()).isEqualTo("port 9");
        assertThat(rows("select device_id || ' ' || kind || ' ' || old_value || ' > ' || new_value from device_event"))
                .containsExactly(lobby + " PORT_CHANGED port 7 of sw-floor > port 9 of sw-floor");
    }

    /** A neighbour that is gone stays, and is called old after three complete readings without it. */
    @Test
    void evidenceAgesByReadingsAndIsKept() {
        everything(NOON);
        TableFixture without = TableFixture.aSwitch(FLOOR, 24).hears(24, CORE, "sw-core");
        for (int n = 1; n <= 3; n++) {
            assertThat(node(lobby).place().old()).isFalse();
            full(floor, without, DeviceKind.NETWORK_SWITCH, NOON.plusSeconds(900L * n));
        }
        assertThat(node(lobby).place().old()).isTrue();
        assertThat(node(lobby).place().portTitle()).isEqualTo("port 7");
        full(floor, without, DeviceKind.NETWORK_SWITCH, NOON.plus(Duration.ofDays(60)));
        assertThat(node(lobby).place().portTitle()).isEqualTo("port 7");
        full(floor, floorSwitch(), DeviceKind.NETWORK_SWITCH, NOON.plus(Duration.ofDays(61)));
        assertThat(node(lobby).place().old()).isFalse();
        assertThat(rows("select kind from device_event")).isEmpty();
    }

    @Test
    void aSilentSwitchKeepsItsMap() {
        everything(NOON);
        TableReading silent = new TableReading(NOON.plusSeconds(900), Outcome.NO_REPLY, List.of(), 2, 2, List.of());
        for (int n = 0; n < 5; n++) {
            store.full(floor, site, silent);
            store.states(floor, silent);
        }
        assertThat(node(lobby).place().old()).isFalse();
        assertThat(wiring().reads().get(floor).outcome()).isEqualTo(Outcome.NO_REPLY);
        assertThat(wiring().reads().get(floor).readAt()).contains(NOON);
    }

    /** A table that was cut short tells nothing about what is missing in it. */
    @Test
    void anIncompleteReadingDoesNotAgeAnything() {
        everything(NOON);
        TableReading cut = TableFixture.aSwitch(FLOOR, 24).reading(DeviceKind.NETWORK_SWITCH, NOON.plusSeconds(900));
        TableReading incomplete = new TableReading(
                cut.at(),
                cut.outcome(),
                cut.tables().stream()
                        .map(table -> new org.roundsman.snmp.ReadTable(table.question(), table.rows(), false))
                        .toList(),
                1,
                0,
                List.of());
        for (int n = 0; n < 4; n++) {
            store.full(floor, site, incomplete);
        }
        assertThat(node(lobby).place().old()).isFalse();
        assertThat(node(lobby).port().orElseThrow().power()).isPresent();
        assertThat(wiring().reads().get(floor).complete()).isFalse();
    }

    @Test
    void shortReadingsBringStatesAlone() {
        everything(NOON);
        TableFixture now = floorSwitch().power(7, 4, 5).with(TableFixture.IF + "8.10007", 2);
        store.states(floor, now.states(NOON.plusSeconds(180)));
        Port port = node(lobby).port().orElseThrow();
        assertThat(port.state()).isEqualTo(PortState.DOWN);
        assertThat(port.power().orElseThrow().faulty()).isTrue();
        assertThat(port.power().orElseThrow().powerClass()).isEmpty();
        assertThat(node(lobby).place().portTitle()).isEqualTo("port 7");
        assertThat(wiring().reads().get(floor).stateAt()).contains(NOON.plusSeconds(180));
    }

    /** The access point's address becomes known after the switch was read: the next reading places it. */
    @Test
    void theForwardingTableServesWhereNoLldpIs() {
        TableFixture bare = TableFixture.aSwitch(FLOOR, 24)
                .without(TableFixture.OWN)
                .learnt("00:00:5e:00:53:12", 12)
                .learnt(GATEWAY, 24);
        full(gateway, TableFixture.aSwitch(GATEWAY, 2), DeviceKind.GATEWAY, NOON);
        full(floor, bare, DeviceKind.NETWORK_SWITCH, NOON);
        assertThat(node(attic).place().known()).isFalse();
        TableFixture point = new TableFixture().mac(TableFixture.IF + "6.1", "00:00:5e:00:53:12");
        assertThat(store.full(attic, site, point.reading(DeviceKind.ACCESS_POINT, NOON))
                        .freshAddresses())
                .isTrue();
        full(floor, bare, DeviceKind.NETWORK_SWITCH, NOON.plusSeconds(60));
        assertThat(node(attic).place().how()).isEqualTo(How.FORWARDING);
        assertThat(node(attic).place().portTitle()).isEqualTo("port 12");
        assertThat(rows("select mac from wiring_learnt")).containsOnly(GATEWAY, "00:00:5e:00:53:12");
    }

    /** A port that a person named is found by its name after the switch renumbered its interfaces. */
    @Test
    void aPersonsPortSurvivesNewNumbers() {
        everything(NOON);
        PortWord word = new PortWord(attic, floor, "sw-floor", OptionalInt.of(10_005), "5", "", "edda", NOON);
        Work.whole(database, connection -> {
            WordRows.store(connection, word);
            return null;
        });
        store.workOut(site);
        assertThat(node(attic).place().how()).isEqualTo(How.PERSON);
        TableFixture renumbered = new TableFixture();
        renumbered.with(TableFixture.IFX + "1.3005", "5").with(TableFixture.IF + "3.3005", 6);
        full(floor, renumbered, DeviceKind.NETWORK_SWITCH, NOON.plusSeconds(900));
        assertThat(node(attic).place().port()).hasValue(3_005);
        assertThat(rows("select title from device_event where device_id = " + attic))
                .containsExactly("Switch port set by a person");
    }

    @Test
    void aRemovedSwitchLeavesItsDevicesUnknown() {
        everything(NOON);
        rows("delete from device where id = " + floor + " returning id");
        store.workOut(site);
        assertThat(node(lobby).place().known()).isFalse();
        assertThat(store.full(floor, site, floorSwitch().reading(DeviceKind.NETWORK_SWITCH, NOON)))
                .isEqualTo(new WiringStore.Stored(false, false));
        assertThat(Optional.ofNullable(wiring().reads().get(floor))).isEmpty();
    }

    /** OWASP ASVS 5.0, 1.2.4 in spirit: what devices send is text, whatever it holds. */
    @Test
    void oddTextsAreStoredAsTheyAre() {
        everything(NOON);
        byte[] odd = {'x', 0, '\'', ';', (byte) 0xff};
        TableFixture tables = floorSwitch()
                .octets(TableFixture.NEIGHBOUR + "9.0.7.1", odd)
                .octets(TableFixture.IFX + "18.10007", odd);
        full(floor, tables, DeviceKind.NETWORK_SWITCH, NOON.plusSeconds(900));
        assertThat(wiring().neighbours().get(floor))
                .anyMatch(seen -> seen.announced().systemName().startsWith("x\\x00';"));
    }
}
