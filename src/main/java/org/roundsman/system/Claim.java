package org.roundsman.system;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;

/** Holds a data folder for this process; see {@link DataFolder#claim()}. */
public final class Claim implements AutoCloseable {

    private final FileChannel channel;

    private Claim(FileChannel channel) {
        this.channel = channel;
    }

    /** The claim, or null when somebody else has it. */
    static Claim tryOn(FileChannel channel) throws IOException {
        FileLock lock;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null; // this very process has it already
        }
        if (lock == null) {
            return null;
        }
        String pid = ProcessHandle.current().pid() + "\n";
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(pid.getBytes(StandardCharsets.US_ASCII)), 0);
        return new Claim(channel);
    }

    /** " (process 123)" as the holder wrote it, or nothing when it did not get to that. */
    static String ownerIn(FileChannel channel) throws IOException {
        ByteBuffer text = ByteBuffer.allocate(32);
        channel.read(text, 0);
        String pid = new String(text.array(), 0, text.position(), StandardCharsets.US_ASCII).strip();
        return pid.matches("\\d+") ? " (process " + pid + ")" : "";
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
