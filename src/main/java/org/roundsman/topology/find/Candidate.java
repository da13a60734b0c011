package org.roundsman.topology.find;

import java.time.Instant;
import java.util.Comparator;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.roundsman.topology.How;

/**
 * One place where a device may hang, with what says so.
 *
 * @param grade within its kind of evidence, 0 the strongest
 * @param shared another switch or gateway is known to be on that port, so that the device hangs further down, or beside it
 * @param missed complete readings since in which the evidence was not there
 * @param firstSeen since when; of two that are alike the newer tells where the device was moved to
 */
record Candidate(
        long child,
        long parent,
        OptionalInt port,
        String portName,
        How how,
        int grade,
        boolean shared,
        int missed,
        Instant firstSeen,
        Instant lastSeen,
        String reason) {

    /** The best first. What was there at the last reading comes before stronger evidence that was not. */
    static final Comparator<Candidate> BEST = Comparator.comparing(Candidate::tier)
            .thenComparing(Candidate::shared)
            .thenComparing(Candidate::grade)
            .thenComparing(candidate -> candidate.port.isEmpty())
            .thenComparing(Candidate::firstSeen, Comparator.reverseOrder())
            .thenComparing(Candidate::parent)
            .thenComparing(candidate -> candidate.port.orElse(0));

    /** Seen at the last reading of whoever reports it. A silent switch is not read, so what it said last stays. */
    boolean current() {
        return missed == 0;
    }

    /** 0 is the first to look at: a person's word, LLDP, forwarding, and then the last two where they were not there lately. */
    int tier() {
        return switch (how) {
            case PERSON -> 0;
            case LLDP -> current() ? 1 : 3;
            case FORWARDING, NOTHING -> current() ? 2 : 4;
        };
    }

    static final int TIERS = 5;

    boolean samePlace(Candidate other) {
        boolean samePort = port.isEmpty() || other.port.isEmpty() || port.getAsInt() == other.port.getAsInt();
        return parent == other.parent && samePort;
    }

    OptionalLong parentId() {
        return OptionalLong.of(parent);
    }
}
