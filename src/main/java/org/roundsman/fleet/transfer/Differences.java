package org.roundsman.fleet.transfer;

import java.util.List;
import java.util.Map;
import org.roundsman.audit.AuditEntry.FieldChange;

/** What differs between two rows of text, column by column. */
final class Differences {

    private Differences() {}

    /**
     * The columns that differ; of something new (nothing before) those that hold something. Line breaks are compared
     * without regard to how they are written, since spreadsheet programs rewrite them.
     */
    static List<FieldChange> between(Map<String, String> before, Map<String, String> after) {
        return after.entrySet().stream()
                .filter(cell -> !plain(cell.getValue()).equals(plain(before.getOrDefault(cell.getKey(), ""))))
                .map(cell -> new FieldChange(cell.getKey(), before.getOrDefault(cell.getKey(), ""), cell.getValue()))
                .toList();
    }

    private static String plain(String text) {
        return text.replace("\r\n", "\n").replace('\r', '\n');
    }
}
