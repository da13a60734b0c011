package org.roundsman.demo.agent;

import org.roundsman.demo.agent.BerReader.Malformed;

/** Answers one request PDU as RFC 3416 says, and RFC 1157 for version 1. One thread at a time. */
final class PduAnswer {

    private static final int NO_ERROR = 0;
    private static final int TOO_BIG = 1;
    private static final int NO_SUCH_NAME = 2;
    static final int AUTHORIZATION_ERROR = 16;
    private static final int NOT_WRITABLE = 17;
    /** Room for the PDU's own fields. */
    private static final int PDU_FIELDS = 32;

    private final Variables variables = new Variables();
    private final Bindings bindings = new Bindings();
    private BerReader in;
    private BerWriter out;
    private int requestId;
    private int listFrom;
    private int listTo;

    /**
     * Reads the PDU at the reader's position and writes the response PDU.
     *
     * @param room octets that the response PDU may take
     * @param refusal error status that is all that the asker gets, or 0
     * @return whether there is a response: a PDU that asks nothing gets none
     */
    boolean answer(BerReader from, BerWriter to, View view, int room, int refusal) throws Malformed {
        in = from;
        out = to;
        int end = in.head();
        int tag = in.tag();
        if (tag != Tags.GET && tag != Tags.GET_NEXT && tag != Tags.GET_BULK && tag != Tags.SET
                || view.versionOne() && tag == Tags.GET_BULK) {
            return false;
        }
        requestId = in.integer();
        int first = in.integer();
        int second = in.integer();
        listFrom = in.position();
        listTo = in.head(Tags.SEQUENCE);
        if (listTo > end) {
            throw new Malformed("variable bindings end after the PDU");
        }
        bindings.read(in, listTo);
        if (refusal != NO_ERROR) {
            echo(refusal, 0);
        } else {
            serve(tag, first, second, view, room);
        }
        return true;
    }

    /** The request id of the PDU read last, for a report about it. */
    int requestId() {
        return requestId;
    }

    private void serve(int tag, int first, int second, View view, int room) {
        switch (tag) {
            case Tags.SET -> echo(view.versionOne() ? NO_SUCH_NAME : NOT_WRITABLE, bindings.count() == 0 ? 0 : 1);
            case Tags.GET -> {
                variables.get(bindings, view);
                respond(view, room);
            }
            case Tags.GET_NEXT -> {
                variables.next(bindings, view, out);
                respond(view, room);
            }
            default -> {
                variables.bulk(bindings, view, out, new Variables.Bulk(first, second, room - PDU_FIELDS));
                respond(view, room);
            }
        }
    }

    private void respond(View view, int room) {
        int start = out.position();
        int missing = variables.write(bindings, view, out);
        if (missing > 0) {
            out.rewind(start);
            echo(NO_SUCH_NAME, missing);
            return;
        }
        out.head(Tags.SEQUENCE, start);
        finish(NO_ERROR, 0, start);
        if (start - out.position() > room) {
            out.rewind(start);
            tooBig(view);
        }
    }

    private void tooBig(View view) {
        if (view.versionOne()) {
            echo(TOO_BIG, 0);
            return;
        }
        int start = out.position();
        out.head(Tags.SEQUENCE, start);
        finish(TOO_BIG, 0, start);
    }

    /** The request's own variable bindings come back with an error. */
    private void echo(int status, int index) {
        int start = out.position();
        out.bytes(in.buffer(), listFrom, listTo - listFrom);
        finish(status, index, start);
    }

    private void finish(int status, int index, int start) {
        out.integer(Tags.INTEGER, index);
        out.integer(Tags.INTEGER, status);
        out.integer(Tags.INTEGER, requestId);
        out.head(Tags.RESPONSE, start);
    }
}
