package org.roundsman.rules.fold;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleValues;
import org.roundsman.rules.ShippedRules;

/** Hand-made sequences; channel utilisation as shipped: 50, 70, 85 % held 15 min, clears at 45 %. */
class LevelsTest {

    private static final long MINUTE = 60_000;

    private final Ladder shipped = ladder(values());
    private final List<String> told = new ArrayList<>();
    private LevelState state = LevelState.IDLE;
    private long at;

    private static RuleValues values() {
        return RuleSet.shipped().of(AlarmType.UTILISATION_HIGH, RuleTarget.service());
    }

    private static Ladder ladder(RuleValues values) {
        return Ladder.of(ShippedRules.of(AlarmType.UTILISATION_HIGH), values);
    }

    private void minutes(int count, double figure) {
        minutes(count, figure, shipped);
    }

    private void minutes(int count, double figure, Ladder ladder) {
        for (int i = 0; i < count; i++) {
            at += MINUTE;
            Levels.Step step = Levels.step(state, new Levels.Sample(at, figure, MINUTE), ladder);
            state = step.state();
            if (step.decision() instanceof Decision.Raise raise) {
                told.add(at / MINUTE + " " + raise.severity().word() + " since " + raise.began() / MINUTE);
            } else if (step.decision() instanceof Decision.Clear) {
                told.add(at / MINUTE + " clear");
            }
        }
    }

    @Test
    void nothingIsRaisedBeforeTheFigureHeldForTheWholeDwell() {
        minutes(15, 90);
        assertThat(told).isEmpty();
        minutes(1, 90);
        assertThat(told).containsExactly("16 major since 1");
    }

    @Test
    void aDipBelowTheThresholdBeginsTheDwellAnew() {
        minutes(14, 90);
        minutes(1, 84);
        minutes(15, 90);
        assertThat(told).as("70 was held all along").containsExactly("16 minor since 1");
        minutes(1, 90);
        assertThat(told).containsExactly("16 minor since 1", "31 major since 1");
    }

    @Test
    void betweenClearingAndRaisingNothingChanges() {
        minutes(16, 60);
        minutes(120, 46);
        assertThat(told).containsExactly("16 warning since 1");
        minutes(16, 45);
        assertThat(told).containsExactly("16 warning since 1", "152 clear");
    }

    @Test
    void theAlarmGoesUpAndDownWithoutGoingAway() {
        minutes(16, 90);
        minutes(16, 79);
        minutes(16, 64);
        minutes(16, 44);
        assertThat(told)
                .as("higher levels clear 5 points below their own threshold, like the lowest")
                .containsExactly("16 major since 1", "32 minor since 1", "48 warning since 1", "64 clear");
    }

    @Test
    void oneMissingReadingLeavesTheDwellAsItIs() {
        minutes(8, 90);
        at += MINUTE;
        minutes(7, 90);
        assertThat(told).containsExactly("16 major since 1");
    }

    @Test
    void aMissingFigureIsNoEvidenceEitherWay() {
        minutes(8, 90);
        minutes(1, Double.NaN);
        minutes(7, 90);
        assertThat(told).containsExactly("16 major since 1");
        minutes(60, Double.NaN);
        assertThat(told).hasSize(1);
        assertThat(state.severity()).contains(Severity.MAJOR);
    }

    @Test
    void aGapOfMoreThanTwoAndAHalfIntervalsBeginsTheDwellAnew() {
        minutes(15, 90);
        at += 2 * MINUTE;
        minutes(1, 90);
        assertThat(told).as("three minutes without a figure").isEmpty();
        minutes(14, 90);
        assertThat(told).isEmpty();
        minutes(1, 90);
        assertThat(told).containsExactly("33 major since 18");
    }

    @Test
    void aGapBreaksTheWayDownAsWell() {
        minutes(16, 60);
        minutes(15, 10);
        at += 30 * MINUTE;
        minutes(15, 10);
        assertThat(told).containsExactly("16 warning since 1");
        minutes(1, 10);
        assertThat(told).hasSize(2);
    }

    @Test
    void anOlderFigureAndTheSameOneAgainChangeNothing() {
        minutes(10, 90);
        LevelState before = state;
        assertThat(Levels.step(state, new Levels.Sample(at, 90, MINUTE), shipped)
                        .state())
                .isEqualTo(before);
        assertThat(Levels.step(state, new Levels.Sample(at - MINUTE, 0, MINUTE), shipped)
                        .state())
                .isEqualTo(before);
    }

    @Test
    void whatIsFineLeavesNothingToRemember() {
        minutes(5, 30);
        assertThat(state).isSameAs(LevelState.IDLE);
        minutes(5, 60);
        minutes(1, 30);
        assertThat(state).isSameAs(LevelState.IDLE);
    }

    @Test
    void afterARestartAnOpenAlarmGoesOnAndClearsInItsTime() {
        state = LevelState.IDLE.corrected(Optional.of(Severity.MAJOR), 5);
        at = 100 * MINUTE;
        minutes(15, 20);
        assertThat(told).isEmpty();
        minutes(1, 20);
        assertThat(told).containsExactly("116 clear");
    }

    @Test
    void afterARestartAnOpenAlarmThatIsStillBadIsNotRaisedAgain() {
        state = LevelState.IDLE.corrected(Optional.of(Severity.MAJOR), 5);
        minutes(60, 95);
        assertThat(told).isEmpty();
        assertThat(state.severity()).contains(Severity.MAJOR);
    }

    @Test
    void aLevelThatIsSwitchedOffWhileItIsUpHandsOverToTheOthers() {
        minutes(16, 90);
        RuleValues old = values();
        RuleValues noMajor = new RuleValues(
                true,
                Severity.MINOR,
                Map.of(Severity.WARNING, 50.0, Severity.MINOR, 70.0),
                old.clear(),
                old.raiseAfter(),
                old.clearAfter(),
                Duration.ZERO,
                List.of());
        minutes(1, 90, ladder(noMajor));
        assertThat(told).containsExactly("16 major since 1", "17 minor since 1");
    }

    @Test
    void lowFiguresCanBeTheBadOnes() {
        Ladder port = Ladder.of(
                ShippedRules.of(AlarmType.PORT_SLOW), RuleSet.shipped().of(AlarmType.PORT_SLOW, RuleTarget.service()));
        minutes(3, 10, port);
        minutes(3, 1, port);
        minutes(3, 10, port);
        minutes(3, 100, port);
        assertThat(told).containsExactly("3 minor since 1", "6 major since 1", "9 minor since 1", "12 clear");
    }
}
