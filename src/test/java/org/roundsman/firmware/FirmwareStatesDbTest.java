package org.roundsman.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.CustomerScope;

class FirmwareStatesDbTest {

    private static final CustomerScope ALL = CustomerScope.everyone();

    private FirmwareHouse town;

    @BeforeEach
    void aTown() {
        town = new FirmwareHouse("firmware_states");
    }

    @Test
    void whatRunsIsJudgedAndMixedSitesAreMarked() {
        long current = town.accessPoint(town.house.site, "ap-1", "6.4.2");
        long old = town.accessPoint(town.house.site, "ap-2", "6.1.0");
        long silent = town.accessPoint(town.house.site, "ap-3", "");
        long other = town.house.fleet.site(town.house.customer, "Hill Top", "Europe/London");
        long alone = town.accessPoint(other, "ap-4", "6.4.2");
        Map<Long, FirmwareState> states = town.states.of(ALL, List.of(current, old, silent, alone, 999_999L));
        assertThat(states.keySet()).containsExactlyInAnyOrder(current, old, silent, alone);
        assertThat(states.get(current).status()).isEqualTo(FirmwareStatus.CURRENT);
        assertThat(states.get(current).mixed()).isTrue();
        assertThat(states.get(old).status()).isEqualTo(FirmwareStatus.WITHDRAWN);
        assertThat(states.get(silent).reason()).isEqualTo("no version was read");
        assertThat(states.get(silent).mixed()).isFalse();
        assertThat(states.get(alone).mixed()).isFalse();
        assertThat(town.states.of(ALL, List.of(current)).get(current).mixed())
                .as("by the others of its site, which were not asked for")
                .isTrue();
        assertThat(town.states.with(ALL, EnumSet.of(FirmwareStatus.WITHDRAWN))).isEqualTo(Set.of(old));
        assertThat(town.states.all(CustomerScope.of(town.house.customer))).hasSize(4);
        assertThat(town.states.all(CustomerScope.of(town.house.customer + 1))).isEmpty();
        assertThat(town.states.of(CustomerScope.of(town.house.customer + 1), List.of(old)))
                .isEmpty();
    }

    @Test
    void theSameReleaseInAnotherSpellingMakesNoMixedSite() {
        long bare = town.accessPoint(town.house.site, "ap-1", "6.4.2");
        long prefixed = town.accessPoint(town.house.site, "ap-2", "v6.4.2");
        FirmwareState state = town.states.of(ALL, List.of(prefixed)).get(prefixed);
        assertThat(state.mixed()).isFalse();
        assertThat(state.onTarget()).isTrue();
        assertThat(state.version()).as("as the device tells it").isEqualTo("v6.4.2");
        town.runs(bare, "6.4.1");
        assertThat(town.states.of(ALL, List.of(prefixed)).get(prefixed).mixed()).isTrue();
    }

    @Test
    void aDeviceWhoseModelIsOfAnotherKindIsNotJudged() {
        long device = town.accessPoint(town.house.site, "ap-1", "6.1.0");
        town.house.fleet.run("update device set kind = 'NETWORK_SWITCH' where id = ?", device);
        FirmwareState state = town.states.of(ALL, List.of(device)).get(device);
        assertThat(state.status()).isEqualTo(FirmwareStatus.NOT_KNOWN);
        assertThat(state.reason()).isEqualTo("its model is of another kind");
    }

    @Test
    void aDecisionShowsAtOnce() {
        long device = town.accessPoint(town.house.site, "ap-1", "6.3.0");
        assertThat(town.states.of(ALL, List.of(device)).get(device).status()).isEqualTo(FirmwareStatus.BEHIND);
        town.decide("ACCEPTED", "6.3.0", "", null);
        assertThat(town.states.of(ALL, List.of(device)).get(device).status()).isEqualTo(FirmwareStatus.CURRENT);
        town.house.fleet.run("update model set firmware_line_id = null");
        assertThat(town.states.of(ALL, List.of(device)).get(device).reason())
                .isEqualTo("no policy: its model has no line of firmware");
    }

    /** The full size; how long it takes is printed, for docs/measurements.md. */
    @Test
    void twentyThousandAccessPointsAreJudged() {
        town.accessPoint(town.house.site, "seed", "6.4.2");
        town.house.fleet.run(
                "insert into site (customer_id, name, time_zone) select ?, 'Site ' || n, 'Europe/London'"
                        + " from generate_series(1, 1000) n",
                town.house.customer);
        town.house.fleet.run(
                "insert into device (site_id, kind, name, host, credential_id, model_id) select s.id,"
                        + " 'ACCESS_POINT', 'ap-' || n, s.id || '-' || n || '.example', (select min(id) from credential), ?"
                        + " from site s, generate_series(1, 20) n where s.name like 'Site %'",
                town.model);
        town.house.fleet.run("insert into device_fact (device_id, fact, value, since) select id, 'FIRMWARE',"
                + " case when id % 17 = 0 then '6.1.0' when id % 5 = 0 then '6.3.' || id % 7 else '6.4.2' end, now()"
                + " from device where name <> 'seed'");
        town.house.fleet.run("analyze");
        town.states.all(ALL);
        long begin = System.nanoTime();
        List<FirmwareState> all = town.states.all(ALL);
        long millis = (System.nanoTime() - begin) / 1_000_000;
        assertThat(all).hasSize(20_001);
        assertThat(all)
                .filteredOn(state -> state.status() == FirmwareStatus.WITHDRAWN)
                .hasSizeBetween(1_170, 1_185);
        assertThat(all).noneMatch(state -> state.status() == FirmwareStatus.NOT_KNOWN);
        System.out.println("20,001 devices judged in " + millis + " ms");
    }
}
