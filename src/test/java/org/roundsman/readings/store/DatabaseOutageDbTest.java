package org.roundsman.readings.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.roundsman.readings.ReadingsFixture.answered;
import static org.roundsman.readings.ReadingsFixture.quick;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.postgresql.ds.PGSimpleDataSource;
import org.roundsman.readings.Backlog;
import org.roundsman.readings.ReadingsFixture;

/** A database of its own that is stopped, killed and started again under the writer. */
class DatabaseOutageDbTest {

    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");

    @TempDir
    private Path folder;

    @TempDir
    private Path spool;

    private int port;
    private EmbeddedPostgres postgres;
    private PGSimpleDataSource source;
    private ReadingsFixture fixture;
    private long device;
    private int sent;

    @BeforeEach
    void start() throws IOException {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        startDatabase();
        source = new PGSimpleDataSource();
        source.setUrl("jdbc:postgresql://localhost:" + port + "/postgres");
        source.setUser("postgres");
        Flyway.configure()
                .dataSource(source)
                .locations("classpath:db/migration")
                .load()
                .migrate();
        fixture = new ReadingsFixture(source);
        device = fixture.accessPoint(fixture.site(fixture.customer("Thistledown Timber"), "Yard", "UTC"), "gate");
    }

    private void startDatabase() throws IOException {
        postgres = EmbeddedPostgres.builder()
                .setDataDirectory(folder.resolve("data"))
                .setCleanDataDirectory(false)
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setPort(port)
                .start();
    }

    @AfterEach
    void stop() throws IOException {
        postgres.close();
    }

    /** All processes of the server die at once, as in a crash of the machine. */
    private void kill() throws IOException {
        long postmaster = Long.parseLong(
                Files.readAllLines(folder.resolve("data/postmaster.pid")).get(0).trim());
        ProcessHandle server = ProcessHandle.of(postmaster).orElseThrow();
        List<ProcessHandle> all = new java.util.ArrayList<>(server.descendants().toList());
        all.add(server);
        all.forEach(ProcessHandle::destroyForcibly);
        await().until(() -> all.stream().noneMatch(ProcessHandle::isAlive));
        // finds nothing to stop, says so in the log, and gives the folder free
        postgres.close();
        Files.deleteIfExists(folder.resolve("data/postmaster.pid"));
    }

    private void send(ReadingWriter writer, int readings) {
        for (int i = 0; i < readings; i++) {
            writer.accept(answered(device, START.plusSeconds(60L * sent), sent % 50, 10));
            sent++;
        }
    }

    private void allIsStoredOnce() {
        await().atMost(Duration.ofSeconds(60)).until(() -> fixture.count("reading_device") == sent);
        assertThat(fixture.count("reading_radio")).isEqualTo(2L * sent);
        assertThat(fixture.count("span")).isEqualTo(1);
    }

    @Test
    void nothingIsLostOrDoubledWhenTheDatabaseStopsForAWhile() throws IOException {
        try (ReadingWriter writer = new ReadingWriter(source, Clock.systemUTC(), quick(spool), WriterListener.NONE)) {
            writer.start();
            send(writer, 100);
            allIsStoredOnce();
            postgres.close();
            send(writer, 500);
            await().until(() -> writer.backlog().failingSince().isPresent());
            await().until(() -> writer.backlog().spilled() == 500);
            Backlog backlog = writer.backlog();
            assertThat(backlog.behind()).isTrue();
            assertThat(backlog.lost()).isZero();
            assertThat(backlog.trouble().orElseThrow())
                    .contains("cannot be reached")
                    .contains("Start it");
            send(writer, 500);
            startDatabase();
            allIsStoredOnce();
            await().until(() -> !writer.backlog().behind());
            assertThat(writer.backlog().trouble()).isEmpty();
        }
    }

    @Test
    void nothingIsLostOrDoubledWhenTheDatabaseIsKilledInTheMiddle() throws Exception {
        AtomicInteger batches = new AtomicInteger();
        WriterListener counting = new WriterListener() {
            @Override
            public void stored(BatchStore.Stored batch, long nanoseconds) {
                batches.incrementAndGet();
            }
        };
        try (ReadingWriter writer = new ReadingWriter(source, Clock.systemUTC(), quick(spool), counting)) {
            writer.start();
            Thread rounds = new Thread(() -> {
                while (sent < 30_000) {
                    send(writer, 50);
                }
            });
            rounds.start();
            await().until(() -> batches.get() >= 2);
            kill();
            rounds.join();
            await().until(() -> writer.backlog().failingSince().isPresent());
            startDatabase();
            allIsStoredOnce();
            assertThat(writer.backlog().lost()).isZero();
        }
    }

    @Test
    void whatWaitsAtAnOrderlyStopIsStoredByTheNextWriter() throws IOException {
        try (ReadingWriter writer = new ReadingWriter(source, Clock.systemUTC(), quick(spool), WriterListener.NONE)) {
            writer.start();
            postgres.close();
            send(writer, 300);
        }
        startDatabase();
        assertThat(fixture.count("reading_device")).isZero();
        try (ReadingWriter writer = new ReadingWriter(source, Clock.systemUTC(), quick(spool), WriterListener.NONE)) {
            assertThat(writer.backlog().spilled()).isEqualTo(300);
            writer.start();
            allIsStoredOnce();
        }
    }

    @Test
    void aFullDiskIsSaidClearlyAndTheRoundsGoOn() throws IOException {
        WriterSettings small = new WriterSettings(
                100, 50, Duration.ofMillis(10), spool, 20_000, Duration.ofMillis(50), Duration.ofMillis(200));
        try (ReadingWriter writer = new ReadingWriter(source, Clock.systemUTC(), small, WriterListener.NONE)) {
            writer.start();
            postgres.close();
            send(writer, 1_000);
            await().until(() -> writer.backlog().failingSince().isPresent());
            Backlog backlog = writer.backlog();
            assertThat(backlog.lost()).isPositive();
            assertThat(backlog.trouble().orElseThrow())
                    .contains(spool.toString())
                    .contains("Free space")
                    .contains("roundsman.readings.spool-bytes");
            await().untilAsserted(() -> {
                Backlog all = writer.backlog();
                assertThat(all.queued() + all.spilled() + all.lost()).isEqualTo(1_000);
            });
            startDatabase();
            await().atMost(Duration.ofSeconds(60))
                    .until(() -> fixture.count("reading_device") == 1_000 - backlog.lost());
            await().until(() -> !writer.backlog().behind());
        }
    }
}
