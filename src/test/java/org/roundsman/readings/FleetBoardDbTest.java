package org.roundsman.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.readings.ReadingsFixture.answered;
import static org.roundsman.readings.ReadingsFixture.refused;
import static org.roundsman.readings.ReadingsFixture.silent;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;
import org.roundsman.readings.BoardQuery.Sort;
import org.roundsman.readings.store.BatchStore;
import org.roundsman.shared.Page;
import org.roundsman.testing.TestDatabase;

class FleetBoardDbTest {

    private static final Instant NOW = Instant.parse("2026-11-25T10:07:00Z");
    private static final CustomerScope ALL = CustomerScope.everyone();
    private static DataSource source;
    private static ReadingsFixture fixture;
    private static long dental;
    private static long ferry;
    private static long clinic;
    private static long pier;
    private static long hall;
    private static long desk;
    private static long mast;
    private static long gateway;

    @BeforeAll
    static void fleet() throws SQLException {
        source = TestDatabase.fresh("board");
        fixture = new ReadingsFixture(source);
        dental = fixture.customer("Pebblegate Dental");
        ferry = fixture.customer("Saltmarsh Ferry Line");
        clinic = fixture.site(dental, "Mill Lane clinic", "Europe/Berlin");
        pier = fixture.site(ferry, "North pier", "America/New_York");
        fixture.site(ferry, "Empty pier", "America/New_York");
        hall = fixture.accessPoint(clinic, "hall");
        desk = fixture.accessPoint(clinic, "desk");
        mast = fixture.accessPoint(pier, "mast 100%_up");
        gateway = fixture.device(pier, "gateway", "GATEWAY");
        new BatchStore(source, at(NOW))
                .store(List.of(
                        answered(hall, NOW.minusSeconds(30), 7, 40),
                        silent(desk, NOW.minusSeconds(300)),
                        silent(desk, NOW.minusSeconds(240)),
                        silent(desk, NOW.minusSeconds(180)),
                        silent(desk, NOW.minusSeconds(60)),
                        answered(mast, NOW.minusSeconds(50), 5, 80),
                        refused(gateway, NOW.minusSeconds(20))));
    }

    private static Clock at(Instant now) {
        return Clock.fixed(now, ZoneOffset.UTC);
    }

    private static FleetBoard board(Instant now) {
        return new FleetBoard(
                source, at(now), () -> new Backlog(0, 0, 0, Optional.empty(), Optional.empty(), Optional.empty()));
    }

    private static BoardQuery search(String words) {
        return new BoardQuery(
                words, Optional.empty(), Optional.empty(), Optional.empty(), Set.of(), Sort.NAME, false, 1, 25);
    }

    @Test
    void totalsCountAccessPointsByCondition() {
        assertThat(board(NOW).totals(ALL)).isEqualTo(new FleetTotals(2, 3, 3, 2, 1, 0, 0, 1, 1, 12));
        assertThat(board(NOW).totals(CustomerScope.of(dental)))
                .isEqualTo(new FleetTotals(1, 1, 2, 1, 1, 0, 0, 0, 0, 7));
    }

    @Test
    void aSilentDeviceStandsFirstAndSaysSinceWhen() {
        Page<DeviceRow> page = board(NOW).devices(ALL, BoardQuery.first());
        assertThat(page.items()).extracting(DeviceRow::deviceId).containsExactly(desk, gateway, hall, mast);
        assertThat(page.total()).isEqualTo(4);
        DeviceRow row = page.items().get(0);
        assertThat(row.condition()).isEqualTo(Condition.SILENT);
        assertThat(row.since()).contains(NOW.minusSeconds(300));
        assertThat(row.lastAnswered()).isEmpty();
        assertThat(row.clients()).isEmpty();
    }

    @Test
    void anAnsweringDeviceShowsItsFigures() {
        DeviceRow row = board(NOW).device(ALL, mast).orElseThrow();
        assertThat(row.condition()).isEqualTo(Condition.ANSWERING);
        assertThat(row.clients()).hasValue(5);
        assertThat(row.busiest()).contains(new BusiestRadio(mast, "mast 100%_up", 2, 80));
        assertThat(row.timeZone()).isEqualTo("America/New_York");
        assertThat(row.ribbon().from()).isEqualTo(Instant.parse("2026-11-24T10:15:00Z"));
        Ribbon.Cell now = row.ribbon().cells().get(95);
        assertThat(now.silent()).isZero();
        // watched since 50 s of the 7 minutes that have gone by
        assertThat(now.watched()).isEqualTo(50 / 420.0);
    }

    @Test
    void aDeviceWhoseRoundIsLongOverdueIsUnwatchedUnlessStoringIsBehind() {
        Instant later = NOW.plusSeconds(600);
        DeviceRow row = board(later).device(ALL, desk).orElseThrow();
        assertThat(row.condition()).isEqualTo(Condition.UNWATCHED);
        assertThat(row.since()).contains(NOW);
        FleetBoard behind = new FleetBoard(
                source, at(later), () -> new Backlog(5, 9, 0, Optional.of(NOW), Optional.empty(), Optional.empty()));
        assertThat(behind.device(ALL, desk).orElseThrow().condition()).isEqualTo(Condition.SILENT);
    }

    @Test
    void aPausedOrNeverVisitedDeviceIsUnwatched() throws SQLException {
        long site = fixture.site(dental, "New clinic " + System.nanoTime(), "Europe/Berlin");
        long fresh = fixture.accessPoint(site, "not yet visited");
        long paused = fixture.accessPoint(site, "paused");
        new BatchStore(source, at(NOW)).store(List.of(answered(paused, NOW.minusSeconds(5), 3, 1)));
        fixture.run("update device set paused = true where id = ?", paused);
        assertThat(board(NOW).device(ALL, fresh).orElseThrow().condition()).isEqualTo(Condition.UNWATCHED);
        assertThat(board(NOW).device(ALL, fresh).orElseThrow().since()).isEmpty();
        assertThat(board(NOW).device(ALL, paused).orElseThrow().condition()).isEqualTo(Condition.UNWATCHED);
        fixture.run("delete from device where site_id = ?", site);
        fixture.run("delete from site where id = ?", site);
    }

    @Test
    void sitesAreCountedAndTroubleStandsFirst() {
        Page<SiteRow> page = board(NOW).sites(ALL, BoardQuery.first());
        assertThat(page.items())
                .extracting(SiteRow::site)
                .containsExactly("Mill Lane clinic", "North pier", "Empty pier");
        SiteRow row = page.items().get(0);
        assertThat(row.accessPoints()).isEqualTo(2);
        assertThat(row.answering()).isEqualTo(1);
        assertThat(row.silent()).isEqualTo(1);
        assertThat(row.troubleSince()).contains(NOW.minusSeconds(300));
        assertThat(row.clients()).hasValue(7);
        assertThat(row.busiest()).contains(new BusiestRadio(hall, "hall", 2, 40));
        // no roll-up yet: the last cell shows what is known now
        assertThat(row.ribbon().cells().get(95).silent()).isEqualTo(0.5);
        SiteRow second = page.items().get(1);
        assertThat(second.otherDevices()).isEqualTo(1);
        assertThat(second.otherTrouble()).isEqualTo(1);
        assertThat(page.items().get(2).clients()).isEmpty();
    }

    @Test
    void searchNeedsEveryWordAndTakesSignsLiterally() {
        assertThat(board(NOW).devices(ALL, search("pebblegate HALL")).items())
                .extracting(DeviceRow::deviceId)
                .containsExactly(hall);
        assertThat(board(NOW).devices(ALL, search("100%_")).items()).hasSize(1);
        assertThat(board(NOW).devices(ALL, search("%")).items()).hasSize(1);
        assertThat(board(NOW).devices(ALL, search("'; drop table device; --")).items())
                .isEmpty();
        assertThat(board(NOW).sites(ALL, search("gateway.example")).items())
                .extracting(SiteRow::siteId)
                .containsExactly(pier);
        fixture.run("insert into device_fact values (?, 'SERIAL', 'SN-4711', now())", hall);
        assertThat(board(NOW).devices(ALL, search("sn-4711")).items()).hasSize(1);
    }

    @Test
    void filtersAndPagesAreCutByTheDatabase() {
        BoardQuery silent = new BoardQuery(
                "",
                Optional.empty(),
                Optional.empty(),
                Optional.of(DeviceKind.ACCESS_POINT),
                Set.of(Condition.SILENT),
                Sort.NAME,
                false,
                1,
                25);
        assertThat(board(NOW).devices(ALL, silent).items())
                .extracting(DeviceRow::deviceId)
                .containsExactly(desk);
        assertThat(board(NOW).sites(ALL, silent).items())
                .extracting(SiteRow::siteId)
                .containsExactly(clinic);
        assertThat(board(NOW)
                        .devices(ALL, BoardQuery.first().only(Set.of(desk, -1L)))
                        .items())
                .extracting(DeviceRow::deviceId)
                .containsExactly(desk);
        assertThat(board(NOW).sites(ALL, BoardQuery.first().only(Set.of(desk))).items())
                .extracting(SiteRow::siteId)
                .containsExactly(clinic);
        assertThat(board(NOW).devices(ALL, BoardQuery.first().only(Set.of())).items())
                .as("none of them, not all of them")
                .isEmpty();
        BoardQuery second = new BoardQuery(
                "", Optional.empty(), Optional.empty(), Optional.empty(), Set.of(), Sort.NAME, true, 2, 3);
        assertThat(board(NOW).devices(ALL, second).items())
                .extracting(DeviceRow::deviceId)
                .containsExactly(desk);
        BoardQuery beyond = new BoardQuery(
                "", Optional.empty(), Optional.empty(), Optional.empty(), Set.of(), Sort.NAME, true, 9, 3);
        assertThat(board(NOW).devices(ALL, beyond).total()).isEqualTo(4);
        assertThat(board(NOW).sites(ALL, beyond).total()).isEqualTo(3);
    }

    @Test
    void everySortWorksInBothDirections() {
        for (Sort sort : Sort.values()) {
            for (boolean descending : List.of(false, true)) {
                BoardQuery query = new BoardQuery(
                        "", Optional.empty(), Optional.empty(), Optional.empty(), Set.of(), sort, descending, 1, 25);
                assertThat(board(NOW).devices(ALL, query).items()).hasSize(4);
                assertThat(board(NOW).sites(ALL, query).items()).hasSize(3);
            }
        }
        BoardQuery clients = new BoardQuery(
                "", Optional.empty(), Optional.empty(), Optional.empty(), Set.of(), Sort.CLIENTS, true, 1, 25);
        assertThat(board(NOW).devices(ALL, clients).items())
                .extracting(DeviceRow::deviceId)
                .startsWith(hall, mast);
    }

    @Test
    void aViewerSeesOneCustomerOnly() {
        CustomerScope viewer = CustomerScope.of(ferry);
        assertThat(board(NOW).device(viewer, hall)).isEmpty();
        assertThat(board(NOW).site(viewer, clinic)).isEmpty();
        assertThat(board(NOW).site(viewer, pier)).isPresent();
        assertThat(board(NOW).devices(viewer, BoardQuery.first()).items())
                .extracting(DeviceRow::customerId)
                .containsOnly(ferry);
        assertThat(board(NOW).sites(viewer, BoardQuery.first()).items())
                .extracting(SiteRow::customerId)
                .containsOnly(ferry);
    }
}
