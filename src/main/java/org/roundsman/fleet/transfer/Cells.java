package org.roundsman.fleet.transfer;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Map;

/**
 * The cells of one row as they are read: what the file has, else what is stored, since a column that a file leaves out
 * changes nothing. What cannot be read becomes a fault of the row.
 */
final class Cells {

    private final Line line;
    private final Map<String, String> stored;

    /**
     * @param stored by column, empty for something new
     */
    Cells(Line line, Map<String, String> stored) {
        this.line = line;
        this.stored = stored;
    }

    String text(String column) {
        return line.has(column)
                ? line.at(column)
                : stored.getOrDefault(column, "").strip();
    }

    /** A whole number; an empty cell means the default. */
    int number(String column, int byDefault) {
        String text = text(column);
        try {
            return text.isEmpty() ? byDefault : Integer.parseInt(text);
        } catch (NumberFormatException e) {
            line.fault(column, "must be a whole number, without a unit");
            return byDefault;
        }
    }

    /** A whole number; null when empty. */
    Integer numberOrNone(String column) {
        return text(column).isEmpty() ? null : Integer.valueOf(number(column, 0));
    }

    /** Megabit per second as kbit/s; null when empty. */
    Integer kbit(String column) {
        String text = text(column);
        try {
            return text.isEmpty()
                    ? null
                    : new BigDecimal(text.replace(',', '.')).movePointRight(3).intValueExact();
        } catch (ArithmeticException | NumberFormatException e) {
            line.fault(column, "must be a number of Mb/s, such as 50 or 2.5");
            return null;
        }
    }

    /** An amount with its decimals as written; null when empty. */
    BigDecimal amount(String column) {
        String text = text(column);
        if (text.isEmpty()) {
            return null;
        }
        if (!text.matches("\\d{1,12}([.,]\\d{1,6})?")) {
            line.fault(column, "must be an amount such as 189.90, without currency and without thousands separators");
            return null;
        }
        return new BigDecimal(text.replace(',', '.'));
    }

    /** A day; null when empty. */
    LocalDate day(String column) {
        String text = text(column);
        try {
            return text.isEmpty() ? null : LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            line.fault(column, "must be a day of the calendar as year-month-day, such as 2026-03-31");
            return null;
        }
    }

    /** Yes or no; an empty cell means no. */
    boolean yes(String column) {
        String text = text(column);
        if (!text.isEmpty() && !text.equalsIgnoreCase("yes") && !text.equalsIgnoreCase("no")) {
            line.fault(column, "must be yes or no");
        }
        return text.equalsIgnoreCase("yes");
    }

    void fault(String column, String reason) {
        line.fault(column, reason);
    }
}
