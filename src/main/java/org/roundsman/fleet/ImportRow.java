package org.roundsman.fleet;

import java.util.List;
import java.util.Map;
import org.roundsman.audit.AuditEntry.FieldChange;

/**
 * What one row of an upload would do.
 *
 * @param file shown name of its file
 * @param row its number in the file; the header is row 1
 * @param name what it is about
 * @param within the site and the customer that it belongs to, as the row names them; may be empty
 * @param changes column by column, old and new; of a new one, what it holds
 * @param faults by column, why it is refused; the empty column stands for the row as a whole
 * @param moved whether it came out differently in the dry run before
 */
public record ImportRow(
        String file,
        int row,
        TransferTable table,
        String name,
        String within,
        ImportOutcome outcome,
        List<FieldChange> changes,
        Map<String, String> faults,
        boolean moved) {}
