package org.roundsman.reports;

import java.time.Instant;
import java.util.Locale;

/**
 * How a report is to look and what people add to it.
 *
 * @param language one of {@link ReportWords#languages}; decides words, numbers, dates and currency
 * @param remark of the account manager, or empty; blank lines part its paragraphs
 * @param costs whether list prices are shown
 * @param revision 1 for the first; a later one replaces those before it
 * @param printed when it was made, for the last page
 */
public record ReportLook(
        Locale language,
        PaperSize paper,
        Brand firm,
        Brand customer,
        String remark,
        boolean costs,
        int revision,
        Instant printed) {

    /** Sheets of ISO 216 and of ANSI/ASME Y14.1. */
    public enum PaperSize {
        A4,
        LETTER
    }

    /**
     * How somebody presents themselves.
     *
     * @param colour {@code #rrggbb}, or empty
     * @param logo PNG or JPEG, or empty
     * @param logoType media type of the logo, or empty
     * @param lines address and whom to ask, each a line
     */
    public record Brand(String name, String colour, byte[] logo, String logoType, java.util.List<String> lines) {
        public static Brand named(String name) {
            return new Brand(name, "", new byte[0], "", java.util.List.of());
        }
    }
}
