package org.roundsman.snmp;

import java.util.List;

/**
 * What was read of one table.
 *
 * @param rows in the order of their index
 * @param complete the table was read to its end; a row that is missing is not there
 */
public record ReadTable(TableQuestion question, List<TableRow> rows, boolean complete) {

    public ReadTable {
        rows = List.copyOf(rows);
    }
}
