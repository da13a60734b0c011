package org.roundsman.fleet.transfer;

import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.fleet.CustomerDraft;

/** A customer as a row of text. */
final class CustomerCells {

    /** Columns of the draft's fields, where they are not called the same. */
    static final Map<String, String> COLUMNS = Map.of("name", "customer");

    private CustomerCells() {}

    static Map<String, String> of(CustomerDraft draft) {
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("customer", draft.name());
        cells.put("note", draft.note());
        return cells;
    }

    static CustomerDraft read(Cells cells) {
        return new CustomerDraft(cells.text("customer"), cells.text("note"));
    }
}
