package org.roundsman.readings.sql;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Rows in PostgreSQL's binary COPY format (PostgreSQL manual, COPY, "Binary Format"). The caller writes each row's
 * fields in the order of the columns that it names to COPY. Not safe between threads.
 */
public final class CopyRows {

    private static final byte[] HEAD = {
        'P', 'G', 'C', 'O', 'P', 'Y', '\n', (byte) 0xff, '\r', '\n', 0, 0, 0, 0, 0, 0, 0, 0, 0
    };
    /** Milliseconds from 1970 to 2000, PostgreSQL's zero of time. */
    private static final long EPOCH_2000 = 946_684_800_000L;

    private ByteBuffer buffer = ByteBuffer.allocate(64 * 1024);
    private int rows;

    public CopyRows() {
        buffer.put(HEAD);
    }

    public int rows() {
        return rows;
    }

    public CopyRows row(int fields) {
        rows++;
        room(2).putShort((short) fields);
        return this;
    }

    public CopyRows nothing() {
        room(4).putInt(-1);
        return this;
    }

    public CopyRows int2(int value) {
        if (value != (short) value) {
            throw new UnstorableException(value + " does not fit into two octets");
        }
        room(6).putInt(2).putShort((short) value);
        return this;
    }

    public CopyRows int4(int value) {
        room(8).putInt(4).putInt(value);
        return this;
    }

    public CopyRows int8(long value) {
        room(12).putInt(8).putLong(value);
        return this;
    }

    /** A whole number near the figure, or null for NaN. */
    public CopyRows int2(double figure) {
        return Double.isNaN(figure) ? nothing() : int2((int) Math.round(figure));
    }

    /** A whole number near the figure, or null for NaN. */
    public CopyRows int4(double figure) {
        return Double.isNaN(figure) ? nothing() : int4((int) Math.round(figure));
    }

    /** NaN is written as null. */
    public CopyRows real(double figure) {
        if (Double.isNaN(figure)) {
            return nothing();
        }
        room(8).putInt(4).putFloat((float) figure);
        return this;
    }

    /** NaN is written as null. */
    public CopyRows wide(double figure) {
        if (Double.isNaN(figure)) {
            return nothing();
        }
        room(12).putInt(8).putDouble(figure);
        return this;
    }

    /**
     * A timestamptz.
     *
     * @param millis since 1970-01-01T00:00Z
     */
    public CopyRows time(long millis) {
        room(12).putInt(8).putLong(Math.multiplyExact(millis - EPOCH_2000, 1000L));
        return this;
    }

    public CopyRows text(String value) {
        byte[] octets = value.getBytes(StandardCharsets.UTF_8);
        room(4 + octets.length).putInt(octets.length).put(octets);
        return this;
    }

    /** The whole stream, its trailer included. */
    byte[] finished() {
        ByteBuffer end = room(2).duplicate();
        end.putShort((short) -1);
        return Arrays.copyOf(end.array(), end.position());
    }

    private ByteBuffer room(int octets) {
        if (buffer.remaining() < octets) {
            ByteBuffer larger = ByteBuffer.allocate(Math.max(buffer.capacity() * 2, buffer.position() + octets));
            buffer = larger.put(buffer.flip());
        }
        return buffer;
    }
}
