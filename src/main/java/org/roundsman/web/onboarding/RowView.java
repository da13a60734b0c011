package org.roundsman.web.onboarding;

import java.util.List;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.fleet.ImportOutcome;
import org.roundsman.fleet.ImportRow;
import org.roundsman.web.page.Words;

/**
 * A row of an import as its page shows it.
 *
 * @param kind of thing that it is about, and where that belongs
 * @param what its name
 * @param sign the outcome's shape, beside its word
 * @param faults why it is refused
 * @param changes what would change
 * @param held what a new one would hold
 */
record RowView(
        String file,
        String row,
        String kind,
        String what,
        String sign,
        String outcome,
        List<Fault> faults,
        List<FieldChange> changes,
        List<FieldChange> held,
        boolean moved) {

    /**
     * What is wrong in a column.
     *
     * @param column empty for the row as a whole
     * @param given what the file holds there; empty where it holds nothing, or the reason says it
     */
    record Fault(String column, String given, String reason) {

        static Fault of(ImportRow row, String column, String reason) {
            String given = row.given().getOrDefault(column, "");
            return new Fault(column, reason.contains("“" + given + "”") ? "" : given, reason);
        }
    }

    static RowView of(ImportRow row) {
        boolean fresh = row.outcome() == ImportOutcome.NEW;
        return new RowView(
                row.file(),
                Words.count(row.row()),
                row.table().one() + (row.within().isEmpty() ? "" : ", " + row.within()),
                row.name().isBlank() ? "without a name" : row.name(),
                sign(row.outcome()),
                row.outcome().word(),
                row.faults().entrySet().stream()
                        .map(fault -> Fault.of(row, fault.getKey(), fault.getValue()))
                        .toList(),
                fresh ? List.of() : row.changes(),
                fresh ? row.changes() : List.of(),
                row.moved());
    }

    static String sign(ImportOutcome outcome) {
        return switch (outcome) {
            case NEW -> "+";
            case CHANGED -> "±";
            case SAME -> "=";
            case REFUSED -> "×";
        };
    }

    public String heldCount() {
        return Words.many(held.size(), "field", "fields");
    }
}
