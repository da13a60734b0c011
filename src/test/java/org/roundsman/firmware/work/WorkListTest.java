package org.roundsman.firmware.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.roundsman.firmware.FirmwarePlace;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.firmware.WorkItem;
import org.roundsman.firmware.WorkItem.Risk;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Running;

class WorkListTest {

    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

    private final List<FirmwareState> states = new ArrayList<>();

    private FirmwareState state(long site, FirmwareStatus status, String version) {
        return state(site, status, version, "TR-22", "6.4.2");
    }

    private FirmwareState state(long site, FirmwareStatus status, String version, String model, String target) {
        FirmwarePlace place = new FirmwarePlace(
                7,
                "Pebblegate Dental",
                site,
                "Site " + site,
                ZoneId.of("UTC"),
                OptionalLong.of(1),
                model,
                OptionalLong.of(3),
                "indoor");
        return new FirmwareState(
                states.size() + 1,
                "ap-" + states.size(),
                DeviceKind.ACCESS_POINT,
                status,
                version,
                Optional.empty(),
                status.word(),
                false,
                target,
                version.equals(target),
                OptionalLong.empty(),
                false,
                place);
    }

    private void add(long site, FirmwareStatus status, String version) {
        states.add(state(site, status, version));
    }

    private void addMore(long site, FirmwareStatus status, boolean security, int behind, boolean mixed) {
        FirmwareState one = state(site, status, "6.4.1");
        states.add(new FirmwareState(
                one.deviceId(),
                one.device(),
                one.kind(),
                one.status(),
                one.version(),
                one.since(),
                one.reason(),
                security,
                one.target(),
                one.onTarget(),
                OptionalLong.of(behind),
                mixed,
                one.place()));
    }

    @Test
    void theRiskiestComesFirst() {
        addMore(1, FirmwareStatus.BEHIND, false, 10, false);
        addMore(2, FirmwareStatus.BEHIND, false, 200, false);
        addMore(3, FirmwareStatus.BEHIND, false, 5, true);
        addMore(4, FirmwareStatus.WITHDRAWN, false, 1, false);
        addMore(5, FirmwareStatus.WITHDRAWN, true, 1, false);
        addMore(6, FirmwareStatus.BEHIND, false, 10, false);
        add(7, FirmwareStatus.EXCEPTED, "5.9.13");
        add(8, FirmwareStatus.NOT_KNOWN, "");
        add(9, FirmwareStatus.AHEAD_OF_POLICY, "7.0");
        List<WorkItem> items = WorkList.of(states, Map.of(6L, 40, 1L, 3));
        assertThat(items).extracting(item -> item.place().siteId()).containsExactly(5L, 4L, 3L, 2L, 6L, 1L);
        assertThat(items)
                .extracting(WorkItem::risk)
                .containsExactly(Risk.SECURITY, Risk.WITHDRAWN, Risk.MIXED, Risk.BEHIND, Risk.BEHIND, Risk.BEHIND);
        assertThat(items.get(4).people()).hasValue(40);
    }

    @Test
    void anAcceptedReleaseIsLeftAloneUnlessTheSiteIsMixed() {
        add(1, FirmwareStatus.CURRENT, "6.3.1");
        assertThat(WorkList.of(states, Map.of())).isEmpty();
        addMore(1, FirmwareStatus.CURRENT, false, 0, true);
        List<WorkItem> items = WorkList.of(states, Map.of());
        assertThat(items).hasSize(1);
        assertThat(items.get(0).risk()).isEqualTo(Risk.MIXED);
        assertThat(items.get(0).devices()).extracting(FirmwareState::version).containsExactly("6.4.1");
        assertThat(items.get(0).of()).isEqualTo(2);
    }

    @Test
    void workIsFittedIntoTheWindowsAndTheRestIsLeft() {
        for (int i = 0; i < 7; i++) {
            add(1, FirmwareStatus.BEHIND, "6.4.1");
        }
        add(2, FirmwareStatus.BEHIND, "6.4.1");
        Running running = window(11, NOON.minusSeconds(3600), NOON.plusSeconds(1900));
        Running night = window(12, NOON.plusSeconds(36_000), NOON.plusSeconds(36_000 + 3_600));
        Fitting fitting =
                new Fitting(site -> site == 1 ? List.of(running, night) : List.of(), Duration.ofMinutes(15), NOON);
        List<WorkItem> items =
                WorkList.of(states, Map.of()).stream().map(fitting::fit).toList();
        assertThat(items.get(0).fits())
                .extracting(WorkItem.Fit::windowId, WorkItem.Fit::devices)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(11L, 2), org.assertj.core.groups.Tuple.tuple(12L, 4));
        assertThat(items.get(0).left()).isEqualTo(1);
        assertThat(items.get(1).unplanned()).isTrue();
        assertThat(items.get(1).left()).isEqualTo(1);
    }

    /** Ten to eleven and half past ten to half past eleven are an hour and a half: six times a quarter of an hour. */
    @Test
    void timeInWhichWindowsOverlapIsThereOnce() {
        for (int i = 0; i < 8; i++) {
            add(1, FirmwareStatus.BEHIND, "6.4.1");
        }
        Instant ten = NOON.plus(Duration.ofHours(10));
        Running first = window(11, ten, ten.plus(Duration.ofMinutes(60)));
        Running within = window(12, ten.plus(Duration.ofMinutes(15)), ten.plus(Duration.ofMinutes(45)));
        Running second = window(13, ten.plus(Duration.ofMinutes(30)), ten.plus(Duration.ofMinutes(90)));
        Fitting fitting = new Fitting(site -> List.of(first, within, second), Duration.ofMinutes(15), NOON);
        WorkItem item = fitting.fit(WorkList.of(states, Map.of()).get(0));
        assertThat(item.fits())
                .extracting(WorkItem.Fit::windowId, WorkItem.Fit::devices)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(11L, 4), org.assertj.core.groups.Tuple.tuple(13L, 2));
        assertThat(item.left()).isEqualTo(2);
    }

    @Test
    void modelsThatAreToRunSomethingElseAreToldApart() {
        states.add(state(1, FirmwareStatus.BEHIND, "6.4.1", "TR-33", "6.5.0"));
        states.add(state(1, FirmwareStatus.WITHDRAWN, "6.4.1", "TR-50X", ""));
        states.add(state(1, FirmwareStatus.BEHIND, "6.4.0", "TR-22", "6.4.2"));
        states.add(state(1, FirmwareStatus.BEHIND, "6.4.1", "TR-22", "6.4.2"));
        add(2, FirmwareStatus.BEHIND, "6.4.1");
        states.add(state(2, FirmwareStatus.BEHIND, "6.4.1", "TR-33", "6.4.2"));
        List<WorkItem> items = WorkList.of(states, Map.of());
        assertThat(items.get(0).targets())
                .containsExactly(
                        new WorkItem.Target("TR-22", "6.4.2"),
                        new WorkItem.Target("TR-33", "6.5.0"),
                        new WorkItem.Target("TR-50X", ""));
        assertThat(items.get(1).targets()).containsExactly(new WorkItem.Target("", "6.4.2"));
    }

    private static Running window(long id, Instant from, Instant to) {
        return new Running(id, "Updates", Reach.SITE, "Site 1", from, to);
    }
}
