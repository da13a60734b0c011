package org.roundsman.snmp.session;

import java.net.InetSocketAddress;
import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ThreadLocalRandom;

/**
 * The tries that are on their way, by their number, in the order of their deadlines: every try waits equally long, so
 * that order is the order of sending. One thread.
 */
final class Tries {

    private static final int FOUR_OCTETS_FROM = 0x0100_0000;

    /** One datagram sent. */
    record Try(Pending pending, int number, long sentAt, long deadline) {}

    private final long timeoutNanos;
    private final Map<Integer, Try> byNumber = new HashMap<>();
    private final ArrayDeque<Try> byDeadline = new ArrayDeque<>();
    private final Map<InetSocketAddress, Pending> byAddress = new HashMap<>();

    Tries(long timeoutNanos) {
        this.timeoutNanos = timeoutNanos;
    }

    Try begin(Pending pending, long now) {
        Try attempt = new Try(pending, freshNumber(), now, now + timeoutNanos);
        byNumber.put(attempt.number, attempt);
        byDeadline.add(attempt);
        byAddress.put(pending.peer.address, pending);
        return attempt;
    }

    /** Numbers are drawn at random so that they cannot be guessed; all of them take four octets. */
    private int freshNumber() {
        int number;
        do {
            number = ThreadLocalRandom.current().nextInt(FOUR_OCTETS_FROM, Integer.MAX_VALUE);
        } while (byNumber.containsKey(number));
        return number;
    }

    /** The try with that number, also when its request is done already; null when there is none. */
    Try find(int number) {
        return byNumber.get(number);
    }

    /** The request that waits for that address, or null. */
    Pending waitingFor(InetSocketAddress address) {
        return byAddress.get(address);
    }

    /** Takes out the next try whose time is over and whose request still waits; null when there is none. */
    Try nextExpired(long now) {
        for (Try first = byDeadline.peek(); first != null && first.deadline <= now; first = byDeadline.peek()) {
            byDeadline.remove();
            if (first.pending.done) {
                byNumber.remove(first.number);
            } else {
                // A reply that comes late still counts while a later try waits.
                first.pending.overdue.add(first.number);
                return first;
            }
        }
        return null;
    }

    void finish(Pending pending) {
        pending.done = true;
        pending.overdue.forEach(byNumber::remove);
        byAddress.remove(pending.peer.address, pending);
    }

    /** Marks a try as answered, though its request is not done: its deadline means nothing any more. */
    void answer(Try attempt) {
        byNumber.remove(attempt.number);
        byDeadline.remove(attempt);
    }

    /** Milliseconds until something may expire, 1 to 1000. */
    long waitMillis(long now) {
        Try first = byDeadline.peek();
        return first == null ? 1_000 : Math.max(1, Math.min(1_000, (first.deadline - now) / 1_000_000 + 1));
    }
}
