package org.roundsman.readings.spool;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32C;
import org.jboss.logging.Logger;
import org.roundsman.measure.Reading;

/** One file of a spool. Guarded by the spool. */
final class Segment {
    private static final Logger LOG = Logger.getLogger(Segment.class);
    private static final int HEAD = 8;
    private static final int LONGEST = 1 << 24;

    private final Path file;
    private long length;
    private long read;
    private long peeked;
    private int unread;
    private int inHand;

    private Segment(Path file) {
        this.file = file;
    }

    static Segment fresh(Path file) {
        return new Segment(file);
    }

    static Segment found(Path file) throws IOException {
        Segment segment = new Segment(file);
        segment.length = Files.size(file);
        try (FileChannel channel = FileChannel.open(file)) {
            long at = 0;
            for (int size = size(channel, at); size >= 0; size = size(channel, at)) {
                segment.unread++;
                at += HEAD + size;
            }
            if (at < segment.length) {
                LOG.warnf(
                        "%s ends in the middle of a reading: %d octets at its end are left out",
                        file, segment.length - at);
                segment.length = at;
            }
        }
        return segment;
    }

    static ByteBuffer frame(byte[] octets) {
        return ByteBuffer.allocate(HEAD + octets.length)
                .putInt(octets.length)
                .putInt(crc(octets))
                .put(octets)
                .flip();
    }

    private static int crc(byte[] octets) {
        CRC32C crc = new CRC32C();
        crc.update(octets, 0, octets.length);
        return (int) crc.getValue();
    }

    Path file() {
        return file;
    }

    long length() {
        return length;
    }

    int unread() {
        return unread;
    }

    void appended(int octets) {
        length += octets;
        unread++;
    }

    void advance() {
        read = peeked;
        unread -= inHand;
        inHand = 0;
    }

    /** Damaged readings are left out with a remark and count as read. */
    List<Reading> peek(int most) throws IOException {
        List<Reading> found = new ArrayList<>();
        inHand = 0;
        peeked = read;
        try (FileChannel channel = FileChannel.open(file)) {
            while (found.size() < most && peeked < length) {
                int size = size(channel, peeked);
                if (size < 0) {
                    LOG.warnf(
                            "%s is damaged at octet %d: %d readings behind are left out",
                            file, peeked, unread - inHand);
                    unread = inHand;
                    peeked = length;
                    break;
                }
                reading(channel, peeked, size, found);
                peeked += HEAD + size;
                inHand++;
            }
        }
        if (found.isEmpty()) {
            advance();
        }
        return found;
    }

    private void reading(FileChannel channel, long at, int size, List<Reading> found) throws IOException {
        ByteBuffer frame = fully(channel, at, HEAD + size);
        byte[] octets = new byte[size];
        frame.position(HEAD).get(octets);
        if (frame.getInt(4) != crc(octets)) {
            LOG.warnf("%s: the reading at octet %d is damaged and left out", file, at);
            return;
        }
        try {
            found.add(ReadingCodec.decode(octets));
        } catch (IOException e) {
            LOG.warnf("%s: the reading at octet %d is left out: %s", file, at, e.getMessage());
        }
    }

    /** Size of the reading whose frame begins there, or -1 when there is no whole frame. */
    private static int size(FileChannel channel, long at) throws IOException {
        if (at + HEAD > channel.size()) {
            return -1;
        }
        int size = fully(channel, at, 4).getInt(0);
        return size <= 0 || size > LONGEST || at + HEAD + size > channel.size() ? -1 : size;
    }

    private static ByteBuffer fully(FileChannel channel, long at, int octets) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(octets);
        while (buffer.hasRemaining()) {
            if (channel.read(buffer, at + buffer.position()) < 0) {
                throw new EOFException("end of file at " + (at + buffer.position()));
            }
        }
        return buffer.flip();
    }
}
