package org.roundsman.reports.document;

/**
 * One cell of a table for people.
 *
 * @param head names its row
 * @param number stands to the right
 * @param whole stays on one line
 */
record Cell(String text, boolean head, boolean number, boolean whole) {

    /** Its classes in the style sheets, or empty. */
    public String style() {
        return ((number ? "num " : "") + (whole ? "whole" : "")).strip();
    }
}
