package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.roundsman.demo.model.Outlook;

class ProgrammeTest {

    private static final Instant START = Instant.parse("2026-11-25T10:02:30Z");
    private static final Instant BEGIN = Instant.parse("2026-11-25T10:03:00Z");

    private final SetClock clock = new SetClock(START.toString());
    private final DemoFleet fleet = DemoFleet.of(DemoFleet.USUAL_SIZE, DemoFleet.USUAL_SEED);
    private final Faults faults = Faults.byHandOnly(fleet, clock);
    private final Programme programme = Programme.ofTheHour(fleet, START);

    private static Instant minute(int minute) {
        return BEGIN.plus(Duration.ofMinutes(minute));
    }

    private boolean has(Programme.Item item, Instant at) {
        return item.devices().stream().allMatch(device -> item.fault().in(faults.bits(device, at.toEpochMilli())));
    }

    @Test
    void everyItemHoldsAtItsMinutesOfEachHourAndAtNoOthers() {
        faults.run(programme);
        for (Programme.Turn turn : programme.turns(START)) {
            Programme.Item item = turn.item();
            assertThat(turn.begins()).isEqualTo(minute(item.minute()));
            assertThat(turn.ends()).isEqualTo(minute(item.minute() + item.minutes()));
            for (int hour = 0; hour < 13; hour++) {
                boolean due = hour % item.every() == 0;
                int from = hour * 60 + item.minute();
                assertThat(has(item, minute(from)))
                        .as(item + " in hour " + hour)
                        .isEqualTo(due);
                assertThat(has(item, minute(from + item.minutes()).minusMillis(1)))
                        .isEqualTo(due);
                assertThat(has(item, minute(from + item.minutes()))).isFalse();
                assertThat(has(item, minute(from).minusMillis(1))).isFalse();
            }
        }
    }

    @Test
    void somethingIsSeenWithinThreeMinutesAndEveryNewKindComesWithinTheHour() {
        assertThat(programme.turns(START).get(0).begins()).isBefore(START.plus(Duration.ofMinutes(2)));
        Set<Fault> shown = EnumSet.noneOf(Fault.class);
        programme.turns(START).forEach(turn -> shown.add(turn.item().fault()));
        assertThat(shown)
                .contains(
                        Fault.UPLINK_LOST,
                        Fault.HUNG,
                        Fault.PORT_DEAD,
                        Fault.POWER_OFF,
                        Fault.LINK_DOWN,
                        Fault.AGENT_SILENT,
                        Fault.RESTARTED,
                        Fault.FLAPPING,
                        Fault.RADIO_OFF,
                        Fault.CREDENTIAL_WRONG,
                        Fault.ROOM_SATURATED,
                        Fault.SETUP_NETWORK);
    }

    /** Else the cause shown would be another one than the programme says. */
    @Test
    void noTwoItemsMeetTheSameDeviceButThoseOfWholeSites() {
        Set<Integer> met = new HashSet<>();
        for (Programme.Turn turn : programme.turns(START)) {
            for (DemoDevice device : turn.item().devices()) {
                boolean whole = turn.item().devices().size() == fleet.devices().size();
                assertThat(whole || met.add(device.number())).as(device.name()).isTrue();
                boolean marked = device.standing().stream().anyMatch(f -> f != Fault.FIRMWARE_STALE);
                assertThat(whole || turn.item().fault() == Fault.LOSSY || !marked)
                        .as(device.name())
                        .isTrue();
            }
        }
    }

    @Test
    void turnsTellWhatRunsAndWhatComesNext() {
        List<Programme.Turn> later = programme.turns(minute(61));
        assertThat(later).isSortedAccordingTo(java.util.Comparator.comparing(Programme.Turn::begins));
        assertThat(later).hasSameSizeAs(programme.turns(START));
        later.forEach(turn -> {
            assertThat(turn.ends()).isAfter(minute(61));
            assertThat(turn.running(minute(61)))
                    .isEqualTo(has(turn, minute(61)) && !turn.begins().isAfter(minute(61)));
        });
        assertThat(later.stream().filter(turn -> turn.running(minute(61)))).isNotEmpty();
    }

    private boolean has(Programme.Turn turn, Instant at) {
        Faults running = Faults.byHandOnly(fleet, clock);
        running.run(programme);
        DemoDevice device = turn.item().devices().get(0);
        return turn.item().fault().in(running.bits(device, at.toEpochMilli()));
    }

    @Test
    void whatRunsEndsWhenTheProgrammeIsStoppedAndARestartIsNotForgotten() {
        faults.run(programme);
        Programme.Item off = programme.turns(START).stream()
                .map(Programme.Turn::item)
                .filter(item -> item.fault() == Fault.POWER_OFF)
                .findFirst()
                .orElseThrow();
        clock.set(minute(off.minute() + 2));
        assertThat(has(off, clock.instant())).isTrue();
        faults.run(Programme.none());
        assertThat(has(off, clock.instant())).isFalse();
        Outlook outlook = new Outlook();
        faults.look(off.devices().get(0), minute(off.minute() + 3).toEpochMilli(), outlook);
        assertThat(outlook.restart).isEqualTo(minute(off.minute() + 2).toEpochMilli());
        assertThat(outlook.booting).isTrue();
    }

    @Test
    void timeOnlyGoesOn() {
        faults.run(programme);
        List<Long> before = new ArrayList<>();
        Outlook outlook = new Outlook();
        for (int minute = 0; minute < 200; minute++) {
            for (DemoDevice device : fleet.devices()) {
                faults.look(device, minute(minute).toEpochMilli(), outlook);
                if (minute == 0) {
                    before.add(outlook.restart);
                }
                assertThat(outlook.restart).isGreaterThanOrEqualTo(before.set(device.number(), outlook.restart));
                assertThat(outlook.linkChanged)
                        .isLessThanOrEqualTo(minute(minute).toEpochMilli());
            }
        }
    }

    @Test
    void nothingChangesBetweenOneSwitchAndTheNext() {
        faults.run(programme);
        for (Programme.Turn turn : programme.turns(START)) {
            DemoDevice device = turn.item().devices().get(0);
            long at = START.toEpochMilli();
            int edges = 0;
            while (at < minute(120).toEpochMilli()) {
                long next = faults.nextSwitch(device, at);
                assertThat(next).isGreaterThan(at);
                assertThat(faults.of(device, next - 1)).isEqualTo(faults.of(device, at));
                at = next;
                edges++;
            }
            assertThat(edges).isGreaterThanOrEqualTo(3);
        }
    }
}
