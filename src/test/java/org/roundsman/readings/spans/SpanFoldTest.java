package org.roundsman.readings.spans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.roundsman.measure.Condition.ANSWERING;
import static org.roundsman.measure.Condition.REFUSING;
import static org.roundsman.measure.Condition.SILENT;
import static org.roundsman.measure.Condition.UNWATCHED;
import static org.roundsman.measure.Outcome.ANSWERED;
import static org.roundsman.measure.Outcome.NO_REPLY;
import static org.roundsman.measure.Outcome.PORT_CLOSED;
import static org.roundsman.measure.Outcome.WRONG_DIGEST;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;

/** The rules are this project's own (DESIGN 5 and 7): checked by cases worked out by hand. */
class SpanFoldTest {

    private static final long MINUTE = 60_000;

    /** Rounds a minute apart, from minute 0 on. */
    private static List<Round> everyMinute(Outcome... outcomes) {
        List<Round> rounds = new ArrayList<>();
        for (Outcome outcome : outcomes) {
            rounds.add(new Round(rounds.size() * MINUTE, outcome, 60));
        }
        return rounds;
    }

    private static List<Turn> turns(List<Round> rounds) {
        return List.copyOf(SpanFold.turns(rounds).values());
    }

    private static Turn turn(double minute, Condition condition, Outcome outcome) {
        return new Turn((long) (minute * MINUTE), condition, outcome);
    }

    @Test
    void twoUnansweredRoundsChangeNothing() {
        assertThat(turns(everyMinute(ANSWERED, NO_REPLY, NO_REPLY, ANSWERED, NO_REPLY, NO_REPLY, ANSWERED)))
                .containsExactly(turn(0, ANSWERING, ANSWERED));
    }

    @Test
    void threeUnansweredRoundsAreSilenceSinceTheFirst() {
        assertThat(turns(everyMinute(ANSWERED, PORT_CLOSED, NO_REPLY, NO_REPLY, NO_REPLY, ANSWERED)))
                .containsExactly(
                        turn(0, ANSWERING, ANSWERED), turn(1, SILENT, PORT_CLOSED), turn(5, ANSWERING, ANSWERED));
    }

    @Test
    void aRefusalCountsAtOnceAndBreaksARowOfUnansweredRounds() {
        assertThat(turns(everyMinute(ANSWERED, NO_REPLY, NO_REPLY, WRONG_DIGEST, NO_REPLY, NO_REPLY, ANSWERED)))
                .containsExactly(
                        turn(0, ANSWERING, ANSWERED), turn(3, REFUSING, WRONG_DIGEST), turn(6, ANSWERING, ANSWERED));
    }

    @Test
    void beforeTheFirstVerdictNobodyWasWatching() {
        assertThat(turns(everyMinute(NO_REPLY, NO_REPLY))).containsExactly(turn(0, UNWATCHED, null));
        assertThat(turns(everyMinute(NO_REPLY, NO_REPLY, NO_REPLY))).containsExactly(turn(0, SILENT, NO_REPLY));
        assertThat(turns(everyMinute(NO_REPLY, ANSWERED)))
                .containsExactly(turn(0, UNWATCHED, null), turn(1, ANSWERING, ANSWERED));
    }

    @Test
    void aGapIsUnwatchedFromTheTimeTheRoundWasDue() {
        List<Round> rounds = List.of(
                new Round(0, ANSWERED, 60), new Round(10 * MINUTE, ANSWERED, 60), new Round(11 * MINUTE, ANSWERED, 60));
        assertThat(turns(rounds))
                .containsExactly(turn(0, ANSWERING, ANSWERED), turn(1, UNWATCHED, null), turn(10, ANSWERING, ANSWERED));
    }

    @Test
    void aRoundAtTwoAndAHalfIntervalsIsLateButNoGap() {
        assertThat(turns(List.of(new Round(0, ANSWERED, 60), new Round(150_000, ANSWERED, 60))))
                .hasSize(1);
        assertThat(turns(List.of(new Round(0, ANSWERED, 60), new Round(150_001, ANSWERED, 60))))
                .hasSize(3);
    }

    @Test
    void silenceStartsAfreshAfterAGap() {
        List<Round> rounds = new ArrayList<>(everyMinute(NO_REPLY, NO_REPLY, NO_REPLY, NO_REPLY));
        rounds.add(new Round(20 * MINUTE, NO_REPLY, 60));
        rounds.add(new Round(21 * MINUTE, NO_REPLY, 60));
        assertThat(turns(rounds)).containsExactly(turn(0, SILENT, NO_REPLY), turn(4, UNWATCHED, null));
        rounds.add(new Round(22 * MINUTE, NO_REPLY, 60));
        assertThat(turns(rounds))
                .containsExactly(turn(0, SILENT, NO_REPLY), turn(4, UNWATCHED, null), turn(20, SILENT, NO_REPLY));
    }

    @Test
    void unansweredRoundsBeforeAGapDoNotCountAfterIt() {
        List<Round> rounds = new ArrayList<>(everyMinute(ANSWERED, NO_REPLY, NO_REPLY));
        rounds.add(new Round(30 * MINUTE, NO_REPLY, 60));
        rounds.add(new Round(31 * MINUTE, ANSWERED, 60));
        assertThat(turns(rounds))
                .containsExactly(turn(0, ANSWERING, ANSWERED), turn(3, UNWATCHED, null), turn(31, ANSWERING, ANSWERED));
    }

    @Test
    void backOffStretchesWhatCountsAsAGap() {
        assertThat(turns(List.of(
                        new Round(0, NO_REPLY, 60),
                        new Round(MINUTE, NO_REPLY, 120),
                        new Round(3 * MINUTE, NO_REPLY, 300),
                        new Round(8 * MINUTE, NO_REPLY, 300))))
                .containsExactly(turn(0, SILENT, NO_REPLY));
    }

    @Property
    void anyCutIntoPartsGivesTheSameTurns(@ForAll("rounds") List<Round> rounds, @ForAll long seed) {
        SpanState state = null;
        var turns = new java.util.TreeMap<Long, Turn>();
        var random = new java.util.Random(seed);
        for (int from = 0; from < rounds.size(); ) {
            int to = Math.min(rounds.size(), from + 1 + random.nextInt(5));
            for (Round round : rounds.subList(from, to)) {
                // as after a restart: the state is made anew from its stored parts
                state = state == null
                        ? null
                        : new SpanState(
                                state.last(),
                                state.condition(),
                                state.since(),
                                state.misses(),
                                state.missingSince(),
                                state.missingOutcome());
                state = SpanFold.step(state, round, turn -> turns.put(turn.at(), turn));
            }
            from = to;
        }
        assertThat(turns).isEqualTo(SpanFold.turns(rounds));
    }

    @Property
    void turnsChangeTheConditionAndFollowFromTheRounds(@ForAll("rounds") List<Round> rounds) {
        List<Turn> turns = turns(rounds);
        assertThat(turns.get(0).at()).isEqualTo(rounds.get(0).at());
        for (int i = 1; i < turns.size(); i++) {
            assertThat(turns.get(i).at()).isGreaterThan(turns.get(i - 1).at());
            assertThat(turns.get(i).condition()).isNotEqualTo(turns.get(i - 1).condition());
        }
        for (Round round : rounds) {
            Turn held = SpanFold.turns(rounds).floorEntry(round.at()).getValue();
            switch (round.outcome().kind()) {
                case ANSWERED -> assertThat(held.condition()).isEqualTo(ANSWERING);
                case REFUSED -> assertThat(held.condition()).isEqualTo(REFUSING);
                default -> assertThat(held).isNotNull();
            }
        }
    }

    @Provide
    Arbitrary<List<Round>> rounds() {
        Arbitrary<Outcome> outcomes = Arbitraries.of(ANSWERED, ANSWERED, NO_REPLY, NO_REPLY, NO_REPLY, WRONG_DIGEST);
        Arbitrary<Integer> waits = Arbitraries.of(30, 60, 60, 60, 90, 149, 150, 151, 3000);
        return Combinators.combine(outcomes, waits)
                .as((outcome, wait) -> new Round(wait * 1000L, outcome, 60))
                .list()
                .ofMinSize(1)
                .ofMaxSize(40)
                .map(steps -> {
                    List<Round> rounds = new ArrayList<>();
                    long at = 0;
                    for (Round step : steps) {
                        at += step.at();
                        rounds.add(new Round(at, step.outcome(), step.nextSeconds()));
                    }
                    return rounds;
                });
    }
}
