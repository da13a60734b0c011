package org.roundsman.claims;

/**
 * How many of a model lie in a room.
 *
 * @param least how many should; 0 where nobody said
 */
public record Shortage(long roomId, String room, long modelId, String model, int there, int least) {

    /** How many are missing; 0 where none are. */
    public int missing() {
        return Math.max(0, least - there);
    }
}
