package org.roundsman.reports.document;

/**
 * One cell of a table for people.
 *
 * @param head names its row
 * @param number stands to the right
 * @param moment stays on one line
 */
record Cell(String text, boolean head, boolean number, boolean moment) {

    /** Its class in the style sheets, or empty. */
    public String style() {
        return number ? "num" : moment ? "moment" : "";
    }
}
