package org.roundsman.snmp;

import java.time.Instant;
import java.util.List;
import org.roundsman.measure.Outcome;

/**
 * What one reading of tables brought back. An agent that fell silent in the middle is not asked the rest.
 *
 * @param at when its first request left
 * @param outcome how the first request ended; tables may still be there when a later one failed
 * @param tables one for each question, in the order of the questions
 * @param requests requests sent, retries included
 * @param timeouts requests that got no reply
 * @param remarks what was odd, in plain words: a table that does not end, a table cut short
 */
public record TableReading(
        Instant at, Outcome outcome, List<ReadTable> tables, int requests, int timeouts, List<String> remarks) {

    public TableReading {
        tables = List.copyOf(tables);
        remarks = List.copyOf(remarks);
    }

    /** What was read of the table with that row object; nothing, and incomplete, when it was not asked for. */
    public ReadTable table(String entry) {
        return tables.stream()
                .filter(table -> table.question().entry().equals(entry))
                .findFirst()
                .orElseGet(() -> new ReadTable(TableQuestion.of(entry, 1), List.of(), false));
    }
}
