package org.roundsman.readings.spans;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import javax.sql.DataSource;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.BeforeContainer;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Reading;
import org.roundsman.readings.Availability;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.readings.Span;
import org.roundsman.readings.store.BatchStore;
import org.roundsman.testing.TestDatabase;

/** Whatever the order, the repeats and the batches in which rounds come, the stored spans are those of the sorted rounds. */
class SpanTrackerDbTest {

    private static final Instant START = Instant.parse("2026-11-20T22:00:00Z");
    private static final List<Outcome> OUTCOMES = List.of(
            Outcome.ANSWERED,
            Outcome.ANSWERED,
            Outcome.NO_REPLY,
            Outcome.NO_REPLY,
            Outcome.NO_REPLY,
            Outcome.WRONG_DIGEST);
    private static final int[] WAITS = {30, 60, 60, 60, 90, 149, 150, 151, 3000};

    private static DataSource source;
    private static ReadingsFixture fixture;
    private static long site;

    @BeforeContainer
    static void database() {
        source = TestDatabase.fresh("spans");
        fixture = new ReadingsFixture(source);
        site = fixture.site(fixture.customer("Quillfeather School"), "Main building", "Europe/Berlin");
    }

    @Property(tries = 60)
    void anyOrderRepeatsAndBatchesGiveTheSameSpans(@ForAll long seed) throws SQLException {
        Random random = new Random(seed);
        long device = fixture.accessPoint(site, "ap " + System.nanoTime());
        List<Reading> sorted = rounds(device, random);
        List<Reading> mixed = new ArrayList<>(sorted);
        Collections.shuffle(mixed, random);
        mixed.addAll(mixed.subList(0, mixed.size() / 3));
        store(mixed, random);

        List<Span> spans =
                ReadingsFixture.history(source).spans(device, Instant.EPOCH, Instant.parse("2030-01-01T00:00:00Z"));
        assertThat(spans).isEqualTo(expected(sorted));
        assertThat(fixture.count("reading_device where device_id = " + device)).isEqualTo(sorted.size());

        Instant from = START.minusSeconds(500);
        Reading last = sorted.get(sorted.size() - 1);
        Instant to = last.at().plusSeconds(900);
        Availability sums = ReadingsFixture.history(source).availability(device, from, to);
        assertThat(sums.answering().plus(sums.silent()).plus(sums.refusing()).plus(sums.unwatched()))
                .isEqualTo(java.time.Duration.between(from, to));
        // at least the time before the first round and after the last one was due
        assertThat(sums.unwatched()).isGreaterThanOrEqualTo(java.time.Duration.ofSeconds(500 + 840));
    }

    private static List<Reading> rounds(long device, Random random) {
        List<Reading> rounds = new ArrayList<>();
        Instant at = START;
        int count = 1 + random.nextInt(40);
        for (int i = 0; i < count; i++) {
            rounds.add(Reading.empty(device, at, OUTCOMES.get(random.nextInt(OUTCOMES.size())), 60));
            at = at.plusSeconds(WAITS[random.nextInt(WAITS.length)]);
        }
        return rounds;
    }

    /** In batches of any size, now and then by a writer that has just started. */
    private static void store(List<Reading> readings, Random random) throws SQLException {
        BatchStore store = new BatchStore(source, Clock.systemUTC());
        for (int from = 0; from < readings.size(); ) {
            int to = Math.min(readings.size(), from + 1 + random.nextInt(8));
            store = random.nextInt(4) == 0 ? new BatchStore(source, Clock.systemUTC()) : store;
            store.store(readings.subList(from, to));
            from = to;
        }
    }

    private static List<Span> expected(List<Reading> sorted) {
        List<Map.Entry<Long, Turn>> turns = List.copyOf(SpanFold.turns(sorted.stream()
                        .map(r -> new Round(r.at().toEpochMilli(), r.outcome(), r.nextInSeconds()))
                        .toList())
                .entrySet());
        List<Span> spans = new ArrayList<>();
        for (int i = 0; i < turns.size(); i++) {
            Turn turn = turns.get(i).getValue();
            spans.add(new Span(
                    Instant.ofEpochMilli(turn.at()),
                    i + 1 < turns.size()
                            ? java.util.Optional.of(
                                    Instant.ofEpochMilli(turns.get(i + 1).getKey()))
                            : java.util.Optional.empty(),
                    turn.condition(),
                    turn.condition() == Condition.UNWATCHED
                            ? java.util.Optional.empty()
                            : java.util.Optional.of(turn.outcome())));
        }
        return spans;
    }
}
