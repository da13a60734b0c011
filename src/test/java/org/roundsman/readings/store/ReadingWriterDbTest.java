package org.roundsman.readings.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.roundsman.readings.ReadingsFixture.answered;
import static org.roundsman.readings.ReadingsFixture.quick;
import static org.roundsman.readings.ReadingsFixture.silent;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Metric;
import org.roundsman.measure.NetworkReading;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.readings.ReadingsFixture;
import org.roundsman.readings.spool.Spool;
import org.roundsman.testing.TestDatabase;

class ReadingWriterDbTest {

    private static final Instant START = Instant.parse("2026-11-25T23:59:00Z");

    @TempDir
    private Path folder;

    private final AtomicInteger unknown = new AtomicInteger();
    private final AtomicInteger aside = new AtomicInteger();
    private final WriterListener counting = new WriterListener() {
        @Override
        public void stored(BatchStore.Stored batch, long nanoseconds) {
            unknown.addAndGet(batch.unknownDevice());
        }

        @Override
        public void putAside() {
            aside.incrementAndGet();
        }
    };

    private DataSource source;
    private ReadingsFixture fixture;
    private long site;
    private long device;

    @BeforeEach
    void database() {
        source = TestDatabase.fresh("writer");
        fixture = new ReadingsFixture(source);
        site = fixture.site(fixture.customer("Orrin & Vale Booksellers"), "High street", "Europe/Berlin");
        device = fixture.accessPoint(site, "counter");
    }

    private ReadingWriter writer() throws IOException {
        return new ReadingWriter(source, Clock.systemUTC(), quick(folder), counting).start();
    }

    private void store(Reading... readings) throws IOException {
        try (ReadingWriter writer = writer()) {
            List.of(readings).forEach(writer::accept);
        }
    }

    private List<List<Object>> everything() {
        List<List<Object>> rows = new ArrayList<>();
        for (String table : List.of(
                "reading_device", "reading_radio", "reading_network", "span", "device_now", "device_fact", "network")) {
            rows.addAll(fixture.rows("select '" + table + "', t::text from " + table + " t order by 2"));
        }
        return rows;
    }

    @Test
    void whatARoundBroughtBackIsReadBackAsItWas() throws IOException {
        Reading reading = answered(device, START, 9, 61.2);
        store(reading, silent(device, START.plusSeconds(60)));
        Reading kept = ReadingsFixture.history(source).lastAnswered(device).orElseThrow();
        assertThat(kept).isEqualTo(reading);
        assertThat(kept.device().has(Metric.MEMORY)).isFalse();
        // the second round fell into the next UTC day
        assertThat(fixture.count("reading_device_20261125")).isEqualTo(1);
        assertThat(fixture.count("reading_device_20261126")).isEqualTo(1);
        assertThat(fixture.rows("select clients, busiest_radio from device_now"))
                .containsExactly(List.of(9, 2));
    }

    @Test
    void theFirstOfTwoReadingsWithOneKeyWinsAndTheSecondChangesNothing() throws IOException {
        Reading first = answered(device, START, 9, 61);
        store(first);
        List<List<Object>> before = everything();
        Reading second = new Reading(
                device,
                START,
                Outcome.ANSWERED,
                30,
                Values.none(Subject.DEVICE),
                List.of(new RadioReading(3, Values.none(Subject.RADIO))),
                List.of(new NetworkReading("Guest", Values.none(Subject.NETWORK))),
                Optional.of(new Facts(Map.of(Fact.SERIAL, "X"), List.of(), List.of())));
        store(second, Reading.empty(device, START, Outcome.NO_REPLY, 60));
        assertThat(everything()).isEqualTo(before);
    }

    @Test
    void ofTwoWithOneKeyInOneBatchTheFirstWins() throws SQLException {
        BatchStore.Stored stored = new BatchStore(source, Clock.systemUTC())
                .store(List.of(answered(device, START, 9, 61), answered(device, START, 1, 2)));
        assertThat(stored).isEqualTo(new BatchStore.Stored(1, 1, 0, 4));
        assertThat(fixture.rows("select clients from device_now")).containsExactly(List.of(9));
    }

    @Test
    void aBatchStoredAgainAfterACommitOfUnknownEndChangesNothing() throws SQLException {
        List<Reading> batch = List.of(answered(device, START, 9, 61), silent(device, START.plusSeconds(60)));
        new BatchStore(source, Clock.systemUTC()).store(batch);
        List<List<Object>> before = everything();
        BatchStore again = new BatchStore(source, Clock.systemUTC());
        assertThat(again.store(batch)).isEqualTo(new BatchStore.Stored(0, 2, 0, 0));
        assertThat(everything()).isEqualTo(before);
        // and a batch that is new only in part stores that part
        List<Reading> partly = List.of(silent(device, START.plusSeconds(60)), silent(device, START.plusSeconds(120)));
        assertThat(again.store(partly)).isEqualTo(new BatchStore.Stored(1, 1, 0, 1));
        assertThat(again.store(List.of(silent(device, START.plusSeconds(180))))).isNotNull();
        assertThat(fixture.rows("select condition, misses from device_now")).containsExactly(List.of(2, 3));
    }

    @Test
    void readingsOfADeletedDeviceAreSkippedAndCounted() throws IOException {
        long gone = fixture.accessPoint(site, "gone");
        try (ReadingWriter writer = writer()) {
            writer.accept(answered(gone, START, 1, 1));
            await().until(() -> fixture.count("reading_device") == 1);
            fixture.run("delete from device where id = ?", gone);
            Facts facts = new Facts(Map.of(Fact.SERIAL, "X"), List.of(), List.of());
            writer.accept(new Reading(
                    gone,
                    START.plusSeconds(60),
                    Outcome.ANSWERED,
                    60,
                    Values.none(Subject.DEVICE),
                    List.of(),
                    List.of(),
                    Optional.of(facts)));
            writer.accept(answered(987_654, START, 1, 1));
            writer.accept(answered(device, START, 1, 1));
            await().until(() -> fixture.count("reading_device") == 2);
            await().until(() -> unknown.get() == 2);
        }
        assertThat(aside).hasValue(0);
    }

    @Test
    void theFirstReadingOfANewDeviceIsStored() throws SQLException {
        BatchStore store = new BatchStore(source, Clock.fixed(START, java.time.ZoneOffset.UTC));
        store.store(List.of(answered(device, START, 1, 1), answered(987_654, START, 1, 1)));
        long added = fixture.accessPoint(site, "added");
        assertThat(store.store(List.of(answered(added, START, 1, 1))).readings())
                .isEqualTo(1);
    }

    @Test
    void aReadingThatNoTableCanHoldIsPutAsideAndTheOthersAreStored() throws IOException {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            readings.add(answered(device, START.plusSeconds(60L * i), i, 1));
        }
        readings.add(
                20,
                new Reading(
                        device,
                        START.plusSeconds(7),
                        Outcome.ANSWERED,
                        60,
                        Values.none(Subject.DEVICE),
                        List.of(new RadioReading(70_000, Values.none(Subject.RADIO))),
                        List.of(),
                        Optional.empty()));
        // past the end of PostgreSQL's calendar
        readings.add(30, Reading.empty(device, Instant.parse("+300000-01-01T00:00:00Z"), Outcome.NO_REPLY, 60));
        store(readings.toArray(Reading[]::new));
        assertThat(fixture.count("reading_device")).isEqualTo(50);
        assertThat(aside).hasValue(2);
        assertThat(Files.readAllLines(folder.resolve("set-aside.txt")))
                .hasSize(2)
                .anyMatch(line -> line.contains("70000 does not fit"));
    }

    @Test
    void aPartitionThatWasDroppedMeanwhileIsMadeAgain() throws IOException {
        try (ReadingWriter writer = writer()) {
            writer.accept(answered(device, START, 1, 1));
            await().until(() -> fixture.count("reading_device") == 1);
            fixture.run("drop table reading_device_20261125");
            writer.accept(answered(device, START.plusSeconds(30), 2, 1));
            await().until(() -> fixture.count("reading_device") == 1);
        }
        assertThat(aside).hasValue(0);
    }

    @Test
    void anSsidWithOctetZeroIsStoredInWords() throws IOException {
        store(new Reading(
                device,
                START,
                Outcome.ANSWERED,
                60,
                Values.none(Subject.DEVICE),
                List.of(),
                List.of(new NetworkReading("a\0b", Values.none(Subject.NETWORK))),
                Optional.of(new Facts(Map.of(Fact.NAME, "x\0"), List.of(), List.of("a\0b")))));
        assertThat(fixture.rows("select ssid from network")).containsExactly(List.of("a\\x00b"));
        assertThat(fixture.rows("select value from device_fact")).containsExactly(List.of("x\\x00"));
        assertThat(aside).hasValue(0);
    }

    @Test
    void aFactKeepsTheTimeAtWhichItWasFirstRead() throws IOException {
        store(
                saying("1.0", START),
                saying("1.0", START.plusSeconds(3600)),
                saying("1.1", START.plusSeconds(7200)),
                // late, and no longer true
                saying("0.9", START.plusSeconds(1800)));
        assertThat(fixture.rows("select value, since at time zone 'UTC' = '2026-11-26 01:59' from device_fact"))
                .containsExactly(List.of("1.1", true));
    }

    private Reading saying(String firmware, Instant at) {
        Facts facts = new Facts(Map.of(Fact.FIRMWARE, firmware), List.of(), List.of());
        return new Reading(
                device,
                at,
                Outcome.ANSWERED,
                60,
                Values.none(Subject.DEVICE),
                List.of(),
                List.of(),
                Optional.of(facts));
    }

    @Test
    void whatAnEarlierProcessLeftOnDiskIsStoredAtTheNextStart() throws IOException {
        try (Spool spool = new Spool(folder, 1 << 20)) {
            spool.append(answered(device, START, 1, 1));
            spool.append(answered(device, START.plusSeconds(60), 2, 1));
        }
        try (ReadingWriter writer = writer()) {
            writer.accept(answered(device, START.plusSeconds(120), 3, 1));
            await().until(() -> fixture.count("reading_device") == 3);
            await().until(() -> !writer.backlog().behind());
        }
        assertThat(fixture.rows("select clients from reading_device order by at"))
                .containsExactly(List.of(1), List.of(2), List.of(3));
    }
}
