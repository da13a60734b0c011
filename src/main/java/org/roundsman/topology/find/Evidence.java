package org.roundsman.topology.find;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import org.roundsman.topology.NeighbourSeen;

/**
 * All that is known about the wiring of one site.
 *
 * @param oldAfter complete readings without it after which evidence is old, at least 1
 * @param edgeMacs a port that learnt more addresses than that is no edge port
 */
public record Evidence(
        List<Member> members,
        List<NeighbourSeen> neighbours,
        List<Learnt> learnt,
        List<Word> words,
        int oldAfter,
        int edgeMacs) {

    public Evidence {
        members = List.copyOf(members);
        neighbours = List.copyOf(neighbours);
        learnt = List.copyOf(learnt);
        words = List.copyOf(words);
    }

    /** An address of a known device, learnt by a bridge on a port. */
    public record Learnt(long deviceId, String mac, int port, Instant firstSeen, Instant lastSeen, int missed) {}

    /**
     * What a person said about a device's place.
     *
     * @param port empty when only the device above is known
     * @param by who said it
     */
    public record Word(long deviceId, long parentId, OptionalInt port, String portName, String by, Instant at) {}
}
