package org.roundsman.firmware.upgrade;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.DeskFixture;
import org.roundsman.firmware.FigureChange;
import org.roundsman.firmware.FigureChange.Figure;
import org.roundsman.firmware.FigureChange.Outcome;
import org.roundsman.firmware.FirmwareChange;
import org.roundsman.firmware.FirmwareChanges;
import org.roundsman.firmware.FirmwareHouse;
import org.roundsman.fleet.CustomerScope;

class UpgradesDbTest {

    private static final Instant NOON = DeskFixture.NOON;

    private FirmwareHouse town;
    private long device;
    private Noticing noticing;
    private Comparing comparing;
    private FirmwareChanges changes;

    @BeforeEach
    void aDevice() {
        town = new FirmwareHouse("firmware_upgrades");
        device = town.accessPoint(town.house.site, "ap-1", "6.4.2");
        noticing = new Noticing(town.house.database);
        comparing = new Comparing(town.house.database);
        changes = new FirmwareChanges(town.house.database);
    }

    private void upgrade(Instant at, String old, String fresh) {
        town.event(device, at.minusSeconds(90), "RESTARTED", "Restarted", "", "");
        town.event(device, at, "FACT_CHANGED", "Firmware changed", old, fresh);
    }

    private List<FirmwareChange> all() {
        return changes.page(CustomerScope.everyone(), OptionalLong.of(device), 1, 50)
                .items();
    }

    @Test
    void aNewVersionWithARestartIsNoticedOnce() {
        town.event(device, NOON.minusSeconds(500), "FACT_CHANGED", "Serial number changed", "a", "b");
        town.event(device, NOON.minusSeconds(400), "FACT_CHANGED", "Firmware is told", "", "6.3.1");
        assertThat(noticing.look(NOON)).isTrue();
        assertThat(noticing.look(NOON)).isFalse();
        upgrade(NOON, "6.3.1", "6.4.2");
        assertThat(noticing.look(NOON)).isTrue();
        assertThat(noticing.look(NOON)).isFalse();
        new Noticing(town.house.database).look(NOON);
        assertThat(all()).hasSize(1);
        FirmwareChange one = all().get(0);
        assertThat(one.old()).isEqualTo("6.3.1");
        assertThat(one.fresh()).isEqualTo("6.4.2");
        assertThat(one.restartedAt()).contains(NOON.minusSeconds(90));
        assertThat(one.place().line()).isEqualTo("Tamarack indoor");
        assertThat(changes.page(CustomerScope.of(town.house.customer + 1), OptionalLong.empty(), 1, 50)
                        .total())
                .isZero();
    }

    @Test
    void anotherUnitInThePlaceIsNoUpgrade() {
        Instant swap = NOON.minus(Duration.ofDays(9));
        town.event(device, swap, "FACT_CHANGED", "Serial number changed", "TR22-0007", "TR22-0419");
        upgrade(swap, "6.4.2", "6.3.1");
        Instant night = NOON.minus(Duration.ofDays(3));
        town.event(device, night, "FACT_CHANGED", "Serial number changed", "TR22-0419", "tr22-0419 ");
        upgrade(night, "6.3.1", "6.4.2");
        noticing.look(NOON);
        quarters(swap.minus(Duration.ofDays(8)), NOON, 10, 4);
        comparing.look(NOON);
        assertThat(all().get(1).otherUnit()).contains(new FirmwareChange.OtherUnit("TR22-0007", "TR22-0419"));
        assertThat(all().get(1).figures()).isEmpty();
        assertThat(all().get(1).settled()).isTrue();
        assertThat(all().get(0).otherUnit())
                .as("the same number in other letters")
                .isEmpty();
        assertThat(all().get(0).figures()).isNotEmpty();
        assertThat(changes.between(town.house.customer, swap, NOON))
                .extracting(FirmwareChange::fresh)
                .containsExactly("6.4.2");
    }

    @Test
    void aRestartThatIsNotedLaterIsFoundAndOneFarAwayIsNot() {
        town.event(device, NOON.minus(Duration.ofHours(9)), "RESTARTED", "Restarted", "", "");
        town.event(device, NOON, "FACT_CHANGED", "Firmware changed", "6.3.1", "6.4.2");
        noticing.look(NOON);
        assertThat(all().get(0).restartedAt()).isEmpty();
        town.event(device, NOON.plusSeconds(30), "RESTARTED", "Restarted", "", "");
        noticing.look(NOON.plusSeconds(60));
        assertThat(all().get(0).restartedAt()).contains(NOON.plusSeconds(30));
    }

    private void quarters(Instant from, Instant to, double clients, double retries) {
        town.house.fleet.run("create table if not exists some_quarter_device partition of quarter_device default");
        town.house.fleet.run("create table if not exists some_quarter_radio partition of quarter_radio default");
        String times = " from generate_series(?::timestamptz, ?::timestamptz - interval '1 second',"
                + " interval '15 minutes') as at";
        town.house.fleet.run(
                "insert into quarter_device (device_id, at, clients_n, clients_mean) select ?, at, 15, ?" + times,
                device,
                (float) clients,
                from.atOffset(ZoneOffset.UTC),
                to.atOffset(ZoneOffset.UTC));
        for (int radio = 1; radio <= 2; radio++) {
            town.house.fleet.run(
                    "insert into quarter_radio (device_id, number, at, retries_n, retries_mean, utilisation_n,"
                            + " utilisation_mean) select ?, ?, at, 15, ?, 15, 30" + times,
                    device,
                    radio,
                    (float) retries,
                    from.atOffset(ZoneOffset.UTC),
                    to.atOffset(ZoneOffset.UTC));
        }
    }

    private FigureChange figure(Figure figure) {
        return all().get(0).figures().stream()
                .filter(one -> one.figure() == figure)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void afterAWeekTheWeeksAreComparedAndThatStays() {
        Instant change = NOON.minus(Duration.ofDays(9));
        upgrade(change, "6.3.1", "6.4.2");
        noticing.look(NOON);
        quarters(change.minus(Duration.ofDays(8)), change, 10, 4);
        quarters(change, NOON, 10.5, 9);
        comparing.look(NOON);
        assertThat(figure(Figure.CLIENTS).outcome()).isEqualTo(Outcome.AS_BEFORE);
        assertThat(figure(Figure.RETRIES).outcome()).isEqualTo(Outcome.HIGHER);
        assertThat(figure(Figure.RETRIES).before()).isEqualTo(4);
        assertThat(figure(Figure.RETRIES).after()).isEqualTo(9);
        assertThat(figure(Figure.UTILISATION).outcome()).isEqualTo(Outcome.AS_BEFORE);
        assertThat(all().get(0).settled()).isTrue();
        town.house.fleet.run("delete from quarter_device");
        comparing.look(NOON.plus(Duration.ofDays(1)));
        assertThat(figure(Figure.CLIENTS).quarters()).isGreaterThan(600);
    }

    @Test
    void thinDataSaysSoAndIsLookedAtAgain() {
        Instant change = NOON.minus(Duration.ofDays(9));
        upgrade(change, "6.3.1", "6.4.2");
        noticing.look(NOON);
        quarters(change.minus(Duration.ofDays(7)), change.minus(Duration.ofDays(6)), 10, 4);
        quarters(change, change.plus(Duration.ofDays(1)), 30, 4);
        comparing.look(NOON);
        assertThat(figure(Figure.CLIENTS).outcome()).isEqualTo(Outcome.TOO_LITTLE);
        assertThat(all().get(0).settled()).isFalse();
        quarters(change.minus(Duration.ofDays(6)), change.minus(Duration.ofDays(3)), 10, 4);
        quarters(change.plus(Duration.ofDays(1)), NOON, 30, 4);
        comparing.look(NOON.plus(Duration.ofMinutes(11)));
        assertThat(figure(Figure.CLIENTS).outcome()).isEqualTo(Outcome.HIGHER);
        assertThat(figure(Figure.CLIENTS).thin()).isFalse();
        comparing.look(NOON.plus(Duration.ofDays(30)));
        assertThat(all().get(0).settled()).as("no more will come").isTrue();
    }

    @Test
    void nothingIsSaidBeforeTwoDaysOrWhenItChangedAgain() {
        upgrade(NOON.minus(Duration.ofDays(1)), "6.4.1", "6.4.2");
        noticing.look(NOON);
        comparing.look(NOON);
        assertThat(all().get(0).comparedAt()).isEmpty();
        upgrade(NOON, "6.4.2", "6.5.0");
        noticing.look(NOON);
        comparing.look(NOON.plus(Duration.ofDays(2)));
        assertThat(all()).hasSize(2);
        assertThat(all().get(1).settled()).isTrue();
        assertThat(all().get(1).figures()).isEmpty();
    }
}
