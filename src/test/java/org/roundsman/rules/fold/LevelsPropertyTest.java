package org.roundsman.rules.fold;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.roundsman.alarms.AlarmType;
import org.roundsman.rules.RuleSet;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.ShippedRules;

/** What holds for any sequence of figures, checked against the definition and not against the fold. */
class LevelsPropertyTest {

    private static final long MINUTE = 60_000;
    private static final long DWELL = 15 * MINUTE;
    private static final Ladder SHIPPED = Ladder.of(
            ShippedRules.of(AlarmType.UTILISATION_HIGH),
            RuleSet.shipped().of(AlarmType.UTILISATION_HIGH, RuleTarget.service()));

    /** Figures with runs, dips, missing values and gaps. */
    record Figure(int run, double value, int minutesApart) {}

    @Provide
    Arbitrary<List<Figure>> sequences() {
        Arbitrary<Double> value = Arbitraries.frequencyOf(
                net.jqwik.api.Tuple.of(6, Arbitraries.of(20.0, 44.0, 46.0, 55.0, 68.0, 72.0, 83.0, 90.0)),
                net.jqwik.api.Tuple.of(1, Arbitraries.just(Double.NaN)));
        return Combinators.combine(Arbitraries.integers().between(1, 25), value, Arbitraries.of(1, 1, 1, 1, 2, 3, 40))
                .as(Figure::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(30);
    }

    private static List<Levels.Sample> samples(List<Figure> figures) {
        List<Levels.Sample> samples = new ArrayList<>();
        long at = 0;
        for (Figure figure : figures) {
            at += (figure.minutesApart - 1) * MINUTE;
            for (int i = 0; i < figure.run; i++) {
                at += MINUTE;
                samples.add(new Levels.Sample(at, figure.value, MINUTE));
            }
        }
        return samples;
    }

    /** For how long up to a sample every figure was at least that, without a gap: straight from the definition. */
    private static long heldAtLeast(List<Levels.Sample> samples, int last, double threshold) {
        long from = samples.get(last).at();
        long next = from;
        for (int i = last; i >= 0; i--) {
            Levels.Sample sample = samples.get(i);
            if (Double.isNaN(sample.figure())) {
                continue;
            }
            if (sample.figure() < threshold || next - sample.at() > 2.5 * MINUTE) {
                break;
            }
            from = sample.at();
            next = from;
        }
        return samples.get(last).at() - from;
    }

    @Property
    void nothingIsRaisedBeforeItsDwellAndRaiseAndClearAlternate(@ForAll("sequences") List<Figure> figures) {
        List<Levels.Sample> samples = samples(figures);
        LevelState state = LevelState.IDLE;
        boolean up = false;
        for (int i = 0; i < samples.size(); i++) {
            Levels.Step step = Levels.step(state, samples.get(i), SHIPPED);
            boolean worse = step.decision() instanceof Decision.Raise raise
                    && (state.severity().isEmpty()
                            || raise.severity().compareTo(state.severity().get()) > 0);
            if (worse) {
                double threshold = ((Decision.Raise) step.decision()).threshold();
                assertThat(heldAtLeast(samples, i, threshold)).isGreaterThanOrEqualTo(DWELL);
            }
            if (step.decision() instanceof Decision.Clear) {
                assertThat(up).isTrue();
                up = false;
            } else if (step.decision() instanceof Decision.Raise) {
                up = true;
            }
            state = step.state();
            assertThat(state.severity().isPresent()).isEqualTo(up);
        }
    }

    @Property
    void whatHeldForItsDwellIsRaised(@ForAll("sequences") List<Figure> figures) {
        List<Levels.Sample> samples = samples(figures);
        LevelState state = LevelState.IDLE;
        for (int i = 0; i < samples.size(); i++) {
            state = Levels.step(state, samples.get(i), SHIPPED).state();
            for (int level = 0; level < Ladder.LEVELS.length; level++) {
                boolean told = !Double.isNaN(samples.get(i).figure());
                if (told && SHIPPED.has(level) && heldAtLeast(samples, i, SHIPPED.threshold(level)) >= DWELL) {
                    assertThat(state.isUp(level)).as("level %d", level).isTrue();
                }
            }
        }
    }

    @Property
    void aHigherLevelIsNeverUpWithoutTheLowerOnes(@ForAll("sequences") List<Figure> figures) {
        LevelState state = LevelState.IDLE;
        for (Levels.Sample sample : samples(figures)) {
            state = Levels.step(state, sample, SHIPPED).state();
            assertThat(Integer.bitCount(state.up() + 1))
                    .as("bits %s", state.up())
                    .isEqualTo(1);
        }
    }

    @Property
    void takingEverythingTwiceChangesNothing(@ForAll("sequences") List<Figure> figures) {
        LevelState once = LevelState.IDLE;
        LevelState twice = LevelState.IDLE;
        for (Levels.Sample sample : samples(figures)) {
            once = Levels.step(once, sample, SHIPPED).state();
            twice = Levels.step(twice, sample, SHIPPED).state();
            Levels.Step again = Levels.step(twice, sample, SHIPPED);
            assertThat(again.decision()).isInstanceOf(Decision.Nothing.class);
            twice = again.state();
            assertThat(twice).isEqualTo(once);
        }
    }
}
