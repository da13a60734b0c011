package org.roundsman.readings.spool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.roundsman.readings.ReadingsFixture.answered;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Reading;

class SpoolTest {

    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");

    @TempDir
    private Path folder;

    private static Reading reading(int number) {
        return answered(number, START.plusSeconds(number), number, 50);
    }

    private Spool open() throws IOException {
        return new Spool(folder, 1 << 20);
    }

    private Path onlySegment() throws IOException {
        try (var files = Files.list(folder)) {
            return files.filter(f -> f.toString().endsWith(".readings"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static List<Reading> drain(Spool spool) throws IOException {
        List<Reading> all = new ArrayList<>();
        for (List<Reading> some = spool.peek(3); !some.isEmpty(); some = spool.peek(3)) {
            all.addAll(some);
            spool.advance();
        }
        return all;
    }

    @Test
    void aReadingComesBackAsItWas() throws IOException {
        Facts facts = new Facts(
                Map.of(Fact.SERIAL, "TR-0001", Fact.NAME, "hall \u00e4\ud83d\ude00\0"),
                List.of(new Facts.RadioFacts(1, "2.4 GHz", "00:00:5e:00:53:01")),
                List.of("Staff", ""));
        Reading plain = reading(7);
        Reading full = new Reading(
                7,
                plain.at(),
                plain.outcome(),
                3600,
                plain.device(),
                plain.radios(),
                plain.networks(),
                Optional.of(facts));
        assertThat(ReadingCodec.decode(ReadingCodec.encode(full))).isEqualTo(full);
        assertThat(ReadingCodec.decode(ReadingCodec.encode(plain))).isEqualTo(plain);
    }

    @Test
    void anotherFormOrCutOctetsAreRefused() {
        byte[] octets = ReadingCodec.encode(reading(1));
        for (int length = 0; length < octets.length; length++) {
            byte[] cut = java.util.Arrays.copyOf(octets, length);
            assertThatThrownBy(() -> ReadingCodec.decode(cut)).isInstanceOf(IOException.class);
        }
        octets[0] = 9;
        assertThatThrownBy(() -> ReadingCodec.decode(octets)).hasMessageContaining("form 9");
    }

    @Test
    void readingsComeBackInOrderAlsoAfterARestart() throws IOException {
        try (Spool spool = open()) {
            for (int i = 1; i <= 5; i++) {
                spool.append(reading(i));
            }
            assertThat(spool.peek(2)).extracting(Reading::deviceId).containsExactly(1L, 2L);
            assertThat(spool.size()).isEqualTo(5);
            spool.advance();
            assertThat(spool.size()).isEqualTo(3);
            spool.append(reading(6));
        }
        try (Spool spool = open()) {
            // a half-read segment comes again from its start: doubled rather than lost
            assertThat(spool.size()).isEqualTo(6);
            assertThat(drain(spool)).extracting(Reading::deviceId).containsExactly(1L, 2L, 3L, 4L, 5L, 6L);
            assertThat(spool.isEmpty()).isTrue();
            spool.append(reading(7));
            assertThat(drain(spool)).extracting(Reading::deviceId).containsExactly(7L);
        }
        try (var files = Files.list(folder)) {
            assertThat(files).isEmpty();
        }
    }

    @Test
    void aTailCutByACrashIsLeftOut() throws IOException {
        try (Spool spool = open()) {
            spool.append(reading(1));
            spool.append(reading(2));
        }
        Path segment = onlySegment();
        try (FileChannel channel = FileChannel.open(segment, StandardOpenOption.WRITE)) {
            channel.truncate(Files.size(segment) - 3);
        }
        try (Spool spool = open()) {
            assertThat(drain(spool)).extracting(Reading::deviceId).containsExactly(1L);
        }
    }

    @Test
    void aDamagedReadingIsLeftOutAndTheRestComes() throws IOException {
        try (Spool spool = open()) {
            spool.append(reading(1));
            spool.append(reading(2));
            spool.append(reading(3));
        }
        Path segment = onlySegment();
        long middle = Files.size(segment) / 2;
        try (FileChannel channel = FileChannel.open(segment, StandardOpenOption.WRITE)) {
            channel.write(ByteBuffer.wrap(new byte[] {-1, -2, -3}), middle);
        }
        try (Spool spool = open()) {
            assertThat(drain(spool)).extracting(Reading::deviceId).containsExactly(1L, 3L);
            assertThat(spool.isEmpty()).isTrue();
        }
    }

    @Test
    void theBoundIsKept() throws IOException {
        try (Spool spool = new Spool(folder, 2_000)) {
            int kept = 0;
            try {
                while (kept < 100) {
                    spool.append(reading(kept));
                    kept++;
                }
            } catch (SpoolFullException e) {
                assertThat(e).hasMessageContaining(folder.toString()).hasMessageContaining("2000 octets");
            }
            assertThat(kept).isBetween(1, 20);
            assertThat(Files.size(onlySegment())).isLessThanOrEqualTo(2_000);
            assertThat(drain(spool)).hasSize(kept);
            spool.append(reading(99));
            assertThat(spool.size()).isEqualTo(1);
        }
    }
}
