package org.roundsman.snmp;

import java.util.List;

/**
 * Some columns of one table to be read. Scalars can be asked for too: they are the one row {@code 0} of the columns of
 * their group.
 *
 * @param entry object identifier of the table's row object, such as ifEntry 1.3.6.1.2.1.2.2.1
 * @param columns last numbers of the columns wanted, at least one
 */
public record TableQuestion(String entry, List<Integer> columns) {

    public TableQuestion {
        columns = List.copyOf(columns);
        if (columns.isEmpty()) {
            throw new IllegalArgumentException("no column of " + entry);
        }
    }

    public static TableQuestion of(String entry, Integer... columns) {
        return new TableQuestion(entry, List.of(columns));
    }
}
