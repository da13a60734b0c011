package org.roundsman.firmware;

import java.time.LocalDate;

/**
 * An exception as entered.
 *
 * @param version empty for whatever runs there
 * @param lastDay the last day on which it holds
 */
public record ExceptionDraft(Long customerId, String version, String reason, LocalDate lastDay) {

    ExceptionDraft tidy() {
        return new ExceptionDraft(customerId, text(version), text(reason), lastDay);
    }

    private static String text(String value) {
        return value == null ? "" : value.strip();
    }
}
