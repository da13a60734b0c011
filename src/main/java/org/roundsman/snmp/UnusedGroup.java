package org.roundsman.snmp;

import java.util.List;

/**
 * Objects of a walk that belong together: a table, or some scalars.
 *
 * @param oid the row object of a table, or what the scalars stand below
 * @param name what a standard MIB module calls the subtree that it is in, or empty
 * @param table whether it is a table
 * @param columns the table's columns, or the scalars
 * @param rows rows of a table; 1 for scalars
 * @param indexes of the first few rows, in dotted numbers; empty for scalars
 */
public record UnusedGroup(
        String oid, String name, boolean table, List<Column> columns, int rows, List<String> indexes) {

    public UnusedGroup {
        columns = List.copyOf(columns);
        indexes = List.copyOf(indexes);
    }

    /**
     * A column or a scalar.
     *
     * @param oid of the column, or of the scalar's instance
     * @param number its last number
     * @param syntax SMI type
     * @param samples the first few values
     */
    public record Column(String oid, int number, String syntax, List<String> samples) {}

    /** How many variables. */
    public int variables() {
        return table ? columns.size() * rows : columns.size();
    }
}
