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
 * @param given by column, what a refused row holds where it is at fault, without spaces around it and shortened to
 *     {@value #LONGEST_GIVEN} characters; columns that are empty are left out
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
        Map<String, String> given,
        boolean moved) {

    /** So much of a value is enough to find it in the file. */
    public static final int LONGEST_GIVEN = 100;
}
