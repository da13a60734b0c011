package org.roundsman.catalogue;

import java.util.OptionalLong;

/**
 * A model takes the releases of another firmware line, or of none any more. Sent within the transaction of the change: what an
 * observer throws undoes it, and what has to be noted of the move is noted in that transaction.
 *
 * @param model its maker and name
 * @param toLine empty where it takes those of no line
 */
public record ModelMoved(long modelId, String model, long fromLine, OptionalLong toLine) {}
