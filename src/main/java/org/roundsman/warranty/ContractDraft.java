package org.roundsman.warranty;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.roundsman.system.StorableText;

/**
 * An extended contract as entered.
 *
 * @param service {@code ADVANCE}, {@code BENCH}, or empty where not known
 * @param from first day that is covered; null where it could not be read
 * @param to last day that is covered
 */
public record ContractDraft(String number, String supplier, String service, LocalDate from, LocalDate to, String note) {

    private static final int FIRST_YEAR = 1990;
    private static final int LAST_YEAR = 2100;

    public ContractDraft {
        number = number == null ? "" : number.strip();
        supplier = supplier == null ? "" : supplier.strip();
        service = service == null ? "" : service;
        note = note == null ? "" : note.strip();
    }

    /** What is wrong with it, by field; empty when nothing is. */
    public Map<String, String> faults() {
        Map<String, String> faults = new LinkedHashMap<>();
        text(faults, "number", number, 60);
        text(faults, "supplier", supplier, 120);
        text(faults, "note", note, 2000);
        if (number.isEmpty()) {
            faults.putIfAbsent("number", "must not be empty");
        }
        if (!service.isEmpty() && !service.equals("ADVANCE") && !service.equals("BENCH")) {
            faults.put("service", "choose from the list");
        }
        day(faults, "from", from);
        day(faults, "to", to);
        if (from != null && to != null && to.isBefore(from)) {
            faults.putIfAbsent("to", "not before the first day");
        }
        return faults;
    }

    private static void text(Map<String, String> faults, String field, String value, int most) {
        if (value.length() > most) {
            faults.put(field, "at most " + most + " characters");
        } else if (value.chars().anyMatch(c -> c < ' ' && c != '\n' && c != '\r' && c != '\t')) {
            faults.put(field, "holds a control character");
        } else if (!StorableText.keeps(value)) {
            faults.put(field, "holds half of a character; type it anew");
        }
    }

    private static void day(Map<String, String> faults, String field, LocalDate day) {
        if (day == null) {
            faults.put(field, "a day, such as 2028-12-31");
        } else if (day.getYear() < FIRST_YEAR || day.getYear() > LAST_YEAR) {
            faults.put(field, "a year from " + FIRST_YEAR + " to " + LAST_YEAR);
        }
    }
}
