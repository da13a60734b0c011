package org.roundsman.readings.spool;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.stream.Stream;
import org.roundsman.measure.Reading;

/**
 * Readings that wait on disk, in the order in which they came. A folder of segment files; each holds frames of length
 * (4 octets), CRC-32C (4 octets) and one reading. What was appended is in the operating system's hands and survives the
 * end of this process; a segment is forced to the disk when it is full and at the close. What was read stays until
 * {@link #advance}; after a crash a half-read segment is read again from its start, so that a reading can come twice but
 * never gets lost. Safe between threads.
 */
public final class Spool implements AutoCloseable {

    private static final long SEGMENT = 16L << 20;

    private final Path folder;
    private final long bound;
    private final Deque<Segment> segments = new ArrayDeque<>();
    private FileChannel tail;
    private long next;
    private int unread;

    /**
     * Opens the folder and finds what an earlier process left there.
     *
     * @param bound most octets that all segments together may take
     */
    public Spool(Path folder, long bound) throws IOException {
        this.folder = folder;
        this.bound = bound;
        Files.createDirectories(folder);
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".readings"))
                    .sorted()
                    .toList()) {
                Segment segment = Segment.found(file);
                segments.add(segment);
                unread += segment.unread();
                next = Math.max(
                        next, Long.parseLong(file.getFileName().toString().substring(0, 12)) + 1);
            }
        }
    }

    public Path folder() {
        return folder;
    }

    /** Readings that wait here. */
    public synchronized int size() {
        return unread;
    }

    public synchronized boolean isEmpty() {
        return unread == 0;
    }

    private long octets() {
        return segments.stream().mapToLong(Segment::length).sum();
    }

    /**
     * Puts a reading behind the others.
     *
     * @throws SpoolFullException when the bound is reached
     * @throws IOException when the disk takes no more; nothing of the reading is left on it then
     */
    public synchronized void append(Reading reading) throws IOException {
        ByteBuffer frame = Segment.frame(ReadingCodec.encode(reading));
        if (octets() + frame.remaining() > bound) {
            throw new SpoolFullException(folder, bound);
        }
        if (tail == null || segments.getLast().length() > SEGMENT) {
            roll();
        }
        Segment segment = segments.getLast();
        long before = segment.length();
        try {
            int octets = frame.remaining();
            while (frame.hasRemaining()) {
                tail.write(frame);
            }
            segment.appended(octets);
            unread++;
        } catch (IOException e) {
            tail.truncate(before);
            tail.position(before);
            throw e;
        }
    }

    private void roll() throws IOException {
        closeTail();
        Path file = folder.resolve(String.format("%012d.readings", next++));
        tail = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        segments.add(Segment.fresh(file));
    }

    /** The oldest readings, at most so many; they stay here. Empty only when nothing waits. */
    public synchronized List<Reading> peek(int most) throws IOException {
        while (!segments.isEmpty()) {
            Segment oldest = segments.getFirst();
            int before = oldest.unread();
            List<Reading> found = oldest.peek(most);
            unread -= before - oldest.unread();
            if (!found.isEmpty()) {
                return found;
            }
            drop(oldest);
        }
        return List.of();
    }

    /** Forgets what {@link #peek} gave last. */
    public synchronized void advance() throws IOException {
        Segment oldest = segments.getFirst();
        int before = oldest.unread();
        oldest.advance();
        unread -= before - oldest.unread();
        if (oldest.unread() == 0) {
            drop(oldest);
        }
    }

    private void drop(Segment segment) throws IOException {
        if (segment == segments.peekLast()) {
            closeTail();
        }
        unread -= segment.unread();
        segments.remove(segment);
        Files.deleteIfExists(segment.file());
    }

    private void closeTail() throws IOException {
        if (tail != null) {
            tail.force(false);
            tail.close();
            tail = null;
        }
    }

    @Override
    public synchronized void close() throws IOException {
        closeTail();
    }
}
