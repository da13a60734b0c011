package org.roundsman.rules.fold;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;
import org.roundsman.alarms.Signal;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;

class DeviceFoldTest {

    private static final Instant START = Instant.parse("2026-03-02T10:00:00Z");
    private static final RuleTarget TARGET = new RuleTarget(1, 2, 3, 7);

    private final Tuning tuning = new Tuning.Book(RuleSet.shipped()).of(TARGET);
    private final List<Signal> out = new ArrayList<>();
    private DeviceFold fold = new DeviceFold(7, tuning, Memory.none());
    private int minute;

    private interface Round {
        Reading at(Instant at);
    }

    private void minutes(int count, Round round) {
        for (int i = 0; i < count; i++) {
            fold.take(round.at(START.plus(Duration.ofMinutes(minute++))), out);
        }
    }

    private List<String> told() {
        return out.stream()
                .map(signal -> Duration.between(START, signal.at()).toMinutes() + " "
                        + signal.key().type().id()
                        + (signal.key().resource().part().isEmpty()
                                ? ""
                                : " " + signal.key().resource().part())
                        + (signal.key().qualifier().isEmpty()
                                ? ""
                                : " " + signal.key().qualifier())
                        + (signal instanceof Signal.Raise raise
                                ? " " + raise.severity().word()
                                : " clear"))
                .toList();
    }

    private static Reading reading(Instant at, Values.Builder device, RadioReading... radios) {
        return new Reading(7, at, Outcome.ANSWERED, 60, device.build(), List.of(radios), List.of(), Optional.empty());
    }

    private static Values.Builder values() {
        return Values.builder(Subject.DEVICE);
    }

    private static RadioReading onAir(int number) {
        return new RadioReading(
                number,
                Values.builder(Subject.RADIO)
                        .set(Metric.CHANNEL, 36)
                        .set(Metric.NOISE, -95)
                        .set(Metric.UTILISATION, 12)
                        .set(Metric.RADIO_CLIENTS, 4)
                        .build());
    }

    /** As the invented access points show it: configuration without anything measured. */
    private static RadioReading switchedOff(int number) {
        return new RadioReading(
                number,
                Values.builder(Subject.RADIO)
                        .set(Metric.CHANNEL, 36)
                        .set(Metric.RADIO_CLIENTS, 0)
                        .build());
    }

    @Test
    void aRadioThatWasOnTheAirAndHearsNothingAnyMoreIsOff() {
        minutes(5, at -> reading(at, values(), onAir(1), onAir(2)));
        minutes(3, at -> reading(at, values(), switchedOff(1), onAir(2)));
        assertThat(told()).containsExactly("7 radio-off radio 1 minor");
        assertThat(out.get(0).text()).contains("Radio 1 was on the air and shows no sign");
        minutes(2, at -> reading(at, values(), onAir(1), onAir(2)));
        assertThat(told()).containsExactly("7 radio-off radio 1 minor", "9 radio-off radio 1 clear");
    }

    @Test
    void aRadioThatIsMissingWhileOthersAreThereIsOff() {
        minutes(5, at -> reading(at, values(), onAir(1), onAir(2)));
        minutes(3, at -> reading(at, values(), onAir(1)));
        assertThat(told()).containsExactly("7 radio-off radio 2 minor");
    }

    @Test
    void aRadioThatWasNeverOnTheAirRaisesNothing() {
        minutes(30, at -> reading(at, values(), switchedOff(1), onAir(2)));
        assertThat(told()).isEmpty();
    }

    @Test
    void aRoundWithoutAnyRadioIsNoEvidence() {
        minutes(5, at -> reading(at, values(), onAir(1), onAir(2)));
        minutes(30, at -> reading(at, values()));
        assertThat(told()).isEmpty();
    }

    @Test
    void aSilentDeviceNeitherRaisesNorClears() {
        minutes(16, at -> reading(at, values().set(Metric.CPU, 99)));
        assertThat(told()).containsExactly("15 cpu-high minor");
        minutes(60, at -> Reading.empty(7, at, Outcome.NO_REPLY, 60));
        minutes(15, at -> reading(at, values().set(Metric.CPU, 5)));
        assertThat(told()).containsExactly("15 cpu-high minor");
        minutes(1, at -> reading(at, values().set(Metric.CPU, 5)));
        assertThat(told()).last().isEqualTo("91 cpu-high clear");
    }

    @Test
    void aPortThatFallsToAHundredMegabitIsSlowAndItsRatingIsTheFastestSpeedSeen() {
        minutes(3, at -> reading(at, values().set(Metric.PORT_SPEED, 1000)));
        minutes(3, at -> reading(at, values().set(Metric.PORT_SPEED, 100)));
        assertThat(told()).containsExactly("5 port-slow minor");
        assertThat(out.get(0).text()).contains("It runs at 100 Mb/s, of 1000 Mb/s.");
        minutes(3, at -> reading(at, values().set(Metric.PORT_SPEED, 1000)));
        assertThat(told()).last().isEqualTo("8 port-slow clear");
    }

    @Test
    void aPortThatWasNeverFastIsNotSlowUnlessItsModelIsKnownToBeFaster() {
        minutes(10, at -> reading(at, values().set(Metric.PORT_SPEED, 100)));
        assertThat(told()).isEmpty();
        fold.modelFastest(2500);
        minutes(3, at -> reading(at, values().set(Metric.PORT_SPEED, 100)));
        assertThat(told()).containsExactly("12 port-slow minor");
        minutes(3, at -> reading(at, values().set(Metric.PORT_SPEED, 1000)));
        assertThat(told()).as("a gigabit is all that the model says").last().isEqualTo("15 port-slow clear");
    }

    @Test
    void anotherUnitInItsPlaceBeginsAnew() {
        Facts facts = new Facts(Map.of(Fact.SERIAL, "A1"), List.of(), List.of());
        Facts others = new Facts(Map.of(Fact.SERIAL, "B2"), List.of(), List.of());
        minutes(1, at -> withFacts(reading(at, values().set(Metric.PORT_SPEED, 1000), onAir(1), onAir(2)), facts));
        minutes(1, at -> withFacts(reading(at, values().set(Metric.PORT_SPEED, 100), onAir(1)), others));
        minutes(10, at -> reading(at, values().set(Metric.PORT_SPEED, 100), onAir(1)));
        assertThat(told()).isEmpty();
    }

    private static Reading withFacts(Reading reading, Facts facts) {
        return new Reading(
                reading.deviceId(),
                reading.at(),
                reading.outcome(),
                reading.nextInSeconds(),
                reading.device(),
                reading.radios(),
                reading.networks(),
                Optional.of(facts));
    }

    @Test
    void aDeviceThatFallsSilentAgainAndAgainFlaps() {
        for (int i = 0; i < 3; i++) {
            minutes(4, at -> Reading.empty(7, at, Outcome.NO_REPLY, 60));
            minutes(6, at -> reading(at, values()));
        }
        assertThat(told()).containsExactly("12 flapping warning", "22 flapping minor");
        assertThat(((Signal.Raise) out.get(0)).began()).isEqualTo(START.plus(Duration.ofMinutes(2)));
        minutes(60, at -> reading(at, values()));
        assertThat(told())
                .as("back to a warning when the first is an hour old, clear when all are")
                .last()
                .isEqualTo("82 flapping clear");
    }

    @Test
    void anotherRestartIsToldAlsoWhereTheSeverityStays() {
        Instant second = START.plus(Duration.ofMinutes(20));
        fold.happened(AlarmType.DEVICE_RESTARTED, START, START, "Restarted.", out);
        fold.happened(AlarmType.DEVICE_RESTARTED, second, second, "Restarted.", out);
        fold.happened(AlarmType.DEVICE_RESTARTED, second, second, "Restarted.", out);
        assertThat(told()).containsExactly("0 device-restarted warning", "20 device-restarted warning");
        assertThat(out.get(1).text()).isEqualTo("2 times within 1 h. Restarted.");
        assertThat(((Signal.Raise) out.get(1)).began()).isEqualTo(START);
    }

    @Test
    void afterAStartWhatIsKnownIsNotToldAgain() {
        Instant now = START.plus(Duration.ofMinutes(30));
        fold.tell(
                AlarmKey.of(AlarmType.DEVICE_RESTARTED, Resource.device(7)), now, Optional.of(Severity.WARNING), START);
        fold.happened(AlarmType.DEVICE_RESTARTED, START, START, "Restarted.", out);
        fold.happened(AlarmType.DEVICE_RESTARTED, START.plusSeconds(60), START.plusSeconds(60), "Restarted.", out);
        assertThat(out).isEmpty();
    }

    /** Common practice, no source: when all devices are silent at once, the fault is with who asks. */
    @Test
    void silencesWhileWeSawNothingDoNotCount() {
        minutes(4, at -> Reading.empty(7, at, Outcome.NO_REPLY, 60));
        minutes(6, at -> reading(at, values()));
        fold.unseen(seenNothing(20, 30), START, out);
        minutes(10, at -> reading(at, values()));
        minutes(6, at -> Reading.empty(7, at, Outcome.NO_REPLY, 60));
        minutes(6, at -> reading(at, values()));
        assertThat(told()).isEmpty();
        minutes(4, at -> Reading.empty(7, at, Outcome.NO_REPLY, 60));
        assertThat(told()).as("a second one of its own").containsExactly("34 flapping warning");
    }

    @Test
    void whatWasRaisedBeforeItWasKnownThatWeSawNothingClears() {
        for (int i = 0; i < 2; i++) {
            minutes(4, at -> Reading.empty(7, at, Outcome.NO_REPLY, 60));
            minutes(6, at -> reading(at, values()));
        }
        assertThat(told()).containsExactly("12 flapping warning");
        fold.unseen(seenNothing(10, Long.MAX_VALUE), START.plus(Duration.ofMinutes(13)), out);
        assertThat(told()).last().isEqualTo("13 flapping clear");
        assertThat(((Signal.Clear) out.get(1)).text())
                .contains("we saw none of the devices")
                .contains("once within 1 h");
        fold.unseen(seenNothing(10, 13), START.plus(Duration.ofMinutes(14)), out);
        fold.pass(AlarmType.FLAPPING, START.plus(Duration.ofMinutes(15)), out);
        assertThat(out).hasSize(2);
    }

    @Test
    void anAlarmThatRestsOnOtherSilencesStandsWhileWeSeeNothing() {
        for (int i = 0; i < 3; i++) {
            minutes(4, at -> Reading.empty(7, at, Outcome.NO_REPLY, 60));
            minutes(6, at -> reading(at, values()));
        }
        fold.unseen(seenNothing(20, 30), START.plus(Duration.ofMinutes(31)), out);
        assertThat(told()).noneMatch(text -> text.endsWith("clear"));
    }

    private static Unseen seenNothing(long fromMinute, long untilMinute) {
        long start = START.toEpochMilli();
        long until = untilMinute == Long.MAX_VALUE ? untilMinute : start + untilMinute * 60_000;
        return new Unseen(List.of(new Unseen.Time(start + fromMinute * 60_000, until)));
    }

    @Test
    void aSetUpNetworkIsTheAlarmsQualifierAndClearsWhenItIsGone() {
        NetworkReading setup = new NetworkReading("Setup-AB12", Values.none(Subject.NETWORK));
        NetworkReading staff = new NetworkReading("Staff", Values.none(Subject.NETWORK));
        minutes(31, at -> carrying(at, setup, staff));
        assertThat(told()).containsExactly("30 setup-network-open Setup-AB12 minor");
        minutes(6, at -> carrying(at, staff));
        assertThat(told()).last().isEqualTo("36 setup-network-open Setup-AB12 clear");
    }

    private static Reading carrying(Instant at, NetworkReading... networks) {
        return new Reading(
                7,
                at,
                Outcome.ANSWERED,
                60,
                Values.none(Subject.DEVICE),
                List.of(),
                List.of(networks),
                Optional.empty());
    }

    @Test
    void aRestartIsAWarningThreeAreMoreAndACalmHourClearsThem() {
        for (int i = 0; i < 3; i++) {
            Instant at = START.plus(Duration.ofMinutes(10L * i));
            fold.happened(AlarmType.DEVICE_RESTARTED, at, at.plusSeconds(90), "Restarted.", out);
        }
        assertThat(told())
                .as("the second one is told with the same severity")
                .containsExactly(
                        "1 device-restarted warning", "11 device-restarted warning", "21 device-restarted minor");
        assertThat(((Signal.Raise) out.get(0)).began()).isEqualTo(START);
        fold.pass(AlarmType.DEVICE_RESTARTED, START.plus(Duration.ofMinutes(79)), out);
        assertThat(told()).last().isEqualTo("79 device-restarted warning");
        fold.pass(AlarmType.DEVICE_RESTARTED, START.plus(Duration.ofMinutes(80)), out);
        assertThat(told()).last().isEqualTo("80 device-restarted clear");
    }

    @Test
    void afterARestartOfTheServiceTheSameReadingsLeadToNoSignalTwice() {
        minutes(20, at -> reading(at, values().set(Metric.CPU, 90)));
        minutes(20, at -> reading(at, values().set(Metric.CPU, 96)));
        assertThat(told()).containsExactly("15 cpu-high warning", "35 cpu-high minor");
        DeviceFold again = new DeviceFold(7, tuning, Memory.none());
        AlarmKey key = AlarmKey.of(AlarmType.CPU_HIGH, Resource.device(7));
        again.tell(key, START.plus(Duration.ofMinutes(35)), Optional.of(Severity.MINOR), START);
        out.clear();
        fold = again;
        minute = 0;
        minutes(20, at -> reading(at, values().set(Metric.CPU, 90)));
        minutes(20, at -> reading(at, values().set(Metric.CPU, 96)));
        assertThat(told()).isEmpty();
        minutes(16, at -> reading(at, values().set(Metric.CPU, 10)));
        assertThat(told()).containsExactly("55 cpu-high clear");
    }

    @Test
    void whatClearedBeforeTheRestartOfTheServiceIsNotRaisedByItsPast() {
        AlarmKey key = AlarmKey.of(AlarmType.CPU_HIGH, Resource.device(7));
        fold.tell(key, START.plus(Duration.ofMinutes(36)), Optional.empty(), START);
        minutes(20, at -> reading(at, values().set(Metric.CPU, 96)));
        minutes(17, at -> reading(at, values().set(Metric.CPU, 10)));
        fold.settle();
        assertThat(told()).isEmpty();
        minutes(16, at -> reading(at, values().set(Metric.CPU, 96)));
        assertThat(told()).containsExactly("52 cpu-high minor");
    }

    @Test
    void anAlarmWhoseDeviceStaysSilentAfterARestartStaysAndGoesWithItsDevice() {
        AlarmKey key = AlarmKey.of(AlarmType.UTILISATION_HIGH, Resource.radio(7, 2));
        fold.tell(key, START, Optional.of(Severity.MAJOR), START);
        minutes(10, at -> Reading.empty(7, at, Outcome.NO_REPLY, 60));
        fold.settle();
        assertThat(told()).isEmpty();
        fold.end(START.plus(Duration.ofMinutes(10)), "The device was removed.", out);
        assertThat(told()).containsExactly("10 utilisation-high radio 2 clear");
    }

    @Test
    void aRuleThatIsSwitchedOffClearsItsAlarms() {
        minutes(16, at -> reading(at, values().set(Metric.CPU, 99)));
        Tuning others = new Tuning.Book(RuleSet.shipped(), List.of(AlarmType.MEMORY_HIGH)).of(TARGET);
        fold.retune(others, START.plus(Duration.ofMinutes(16)), out);
        assertThat(told()).containsExactly("15 cpu-high minor", "16 cpu-high clear");
        assertThat(out.get(1).text()).isEqualTo("The rule is switched off.");
    }
}
