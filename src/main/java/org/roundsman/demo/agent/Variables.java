package org.roundsman.demo.agent;

/** Finds the variables that a request asks for, and writes them. One thread at a time. */
final class Variables {

    private static final int NO_SUCH_OBJECT = -1;
    private static final int NO_SUCH_INSTANCE = -2;
    private static final int END_OF_VIEW = -3;
    /** Heads of one binding: a sequence, at most three octets of length. */
    private static final int BINDING_HEAD = 4;

    /**
     * The fields of a GetBulk.
     *
     * @param room octets for the bindings
     */
    record Bulk(int nonRepeaters, int repetitions, int room) {}

    /** Place in the shape, or one of the exceptions above. */
    private final int[] found = new int[Limits.VARIABLES];
    /** Name to write: a binding of the request, or where negative, a place in the shape as {@code -place - 1}. */
    private final int[] named = new int[Limits.VARIABLES];

    private final int[] columns = new int[Limits.VARIABLES];
    private final int[] lastNames = new int[Limits.VARIABLES];
    private int count;

    void get(Bindings asked, View view) {
        Shape shape = view.shape();
        int guess = 0;
        count = asked.count();
        for (int i = 0; i < count; i++) {
            int place = shape.find(asked.name(i), asked.length(i), guess);
            named[i] = i;
            if (place >= 0) {
                found[i] = place;
                guess = place + 1;
            } else {
                boolean object = shape.knowsObject(asked.name(i), asked.length(i), -place - 1);
                found[i] = object ? NO_SUCH_INSTANCE : NO_SUCH_OBJECT;
            }
        }
    }

    void next(Bindings asked, View view, BerWriter scratch) {
        count = 0;
        for (int i = 0; i < asked.count(); i++) {
            put(i, present(view, after(asked, i, view.shape()), scratch));
        }
    }

    void bulk(Bindings asked, View view, BerWriter scratch, Bulk bulk) {
        count = 0;
        int once = Math.min(Math.max(0, bulk.nonRepeaters()), asked.count());
        int room = bulk.room();
        for (int i = 0; i < asked.count(); i++) {
            columns[i] = after(asked, i, view.shape());
        }
        for (int i = 0; i < once && room > 0; i++) {
            int place = present(view, columns[i], scratch);
            room -= size(asked, view, i, place, scratch);
            if (room >= 0) {
                put(i, place);
            }
        }
        boolean more = once < asked.count();
        for (int turn = 0; turn < bulk.repetitions() && more && room > 0; turn++) {
            more = false;
            for (int i = once; i < asked.count() && room > 0 && count < Limits.VARIABLES; i++) {
                int place = present(view, columns[i], scratch);
                room -= size(asked, view, i, place, scratch);
                if (room >= 0) {
                    putRow(i, turn, place);
                    more |= place >= 0;
                }
                columns[i] = place < 0 ? view.shape().size() : place + 1;
            }
        }
    }

    /** Past the end, the name of a row is that of the row before it (RFC 3416, 4.2.3). */
    private void putRow(int binding, int turn, int place) {
        found[count] = place;
        named[count] = place >= 0 ? -place - 1 : turn == 0 ? binding : lastNames[binding];
        lastNames[binding] = named[count++];
    }

    private void put(int binding, int place) {
        found[count] = place;
        named[count++] = place >= 0 ? -place - 1 : binding;
    }

    private static int after(Bindings asked, int binding, Shape shape) {
        int place = shape.find(asked.name(binding), asked.length(binding), 0);
        return place >= 0 ? place + 1 : -place - 1;
    }

    /** The first variable from that place on that has a value now, and one that the version can carry. */
    private static int present(View view, int from, BerWriter scratch) {
        int start = scratch.position();
        for (int place = from; place < view.shape().size(); place++) {
            view.shape().value(place).write(view.state(), scratch);
            boolean there = scratch.position() < start && carried(view, scratch);
            scratch.rewind(start);
            if (there) {
                return place;
            }
        }
        return END_OF_VIEW;
    }

    private static boolean carried(View view, BerWriter written) {
        return !view.versionOne() || written.buffer()[written.position()] != Tags.COUNTER64;
    }

    private static int size(Bindings asked, View view, int binding, int place, BerWriter scratch) {
        if (place < 0) {
            return BINDING_HEAD + asked.encodedLength(binding) + 2;
        }
        int start = scratch.position();
        view.shape().value(place).write(view.state(), scratch);
        int value = start - scratch.position();
        scratch.rewind(start);
        return BINDING_HEAD + view.shape().encodedName(place).length + value;
    }

    /**
     * Writes all bindings, the last one first.
     *
     * @return 0, or in version 1 the number of the first variable that cannot be given, from 1
     */
    int write(Bindings asked, View view, BerWriter out) {
        int missing = 0;
        for (int i = count - 1; i >= 0; i--) {
            int start = out.position();
            boolean given = writeValue(found[i], view, out);
            if (!given && view.versionOne()) {
                missing = i + 1;
            }
            if (named[i] >= 0) {
                asked.write(named[i], out);
            } else {
                byte[] name = view.shape().encodedName(-named[i] - 1);
                out.bytes(name, 0, name.length);
            }
            out.head(Tags.SEQUENCE, start);
        }
        return missing;
    }

    private static boolean writeValue(int place, View view, BerWriter out) {
        int start = out.position();
        if (place >= 0) {
            view.shape().value(place).write(view.state(), out);
            if (out.position() < start) {
                return carried(view, out);
            }
        }
        out.empty(
                place == NO_SUCH_OBJECT
                        ? Tags.NO_SUCH_OBJECT
                        : place == END_OF_VIEW ? Tags.END_OF_MIB_VIEW : Tags.NO_SUCH_INSTANCE);
        return false;
    }
}
