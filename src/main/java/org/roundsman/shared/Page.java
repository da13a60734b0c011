package org.roundsman.shared;

import java.util.List;

/**
 * One page of a longer, ordered list that was cut by the server.
 *
 * @param items what stands on this page, in order, never null
 * @param number page number, from 1
 * @param size the most items a page holds, at least 1
 * @param total items on all pages together
 */
public record Page<T>(List<T> items, int number, int size, long total) {

    public Page {
        items = List.copyOf(items);
        if (number < 1 || size < 1 || total < 0) {
            throw new IllegalArgumentException("page " + number + " of size " + size + " over " + total + " items");
        }
    }

    /** Number of the last page; 1 when there is nothing to show. */
    public int last() {
        return (int) Math.max(1, (total + size - 1) / size);
    }

    public boolean hasNext() {
        return number < last();
    }

    public boolean hasPrevious() {
        return number > 1;
    }
}
