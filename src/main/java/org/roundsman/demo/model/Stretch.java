package org.roundsman.demo.model;

/**
 * A stretch of time.
 *
 * @param from epoch milliseconds, first moment
 * @param to epoch milliseconds, exclusive; {@link Long#MAX_VALUE} while it goes on
 */
public record Stretch(long from, long to) {

    public boolean holds(long epochMilli) {
        return epochMilli >= from && epochMilli < to;
    }
}
