package org.roundsman.reports.document;

/**
 * One cell of a table for people.
 *
 * @param head names its row
 * @param number stands to the right
 */
record Cell(String text, boolean head, boolean number) {}
