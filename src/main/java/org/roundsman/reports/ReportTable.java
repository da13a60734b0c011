package org.roundsman.reports;

import java.util.List;

/**
 * One table of a report, for a spreadsheet or a program: plain values, not words for people.
 *
 * @param key such as {@code sites}; lower case and hyphens
 * @param columns names, lower case and hyphens, with the unit where there is one
 * @param rows one value a column: a text, a number, a day, a moment, or null where it is not known
 */
public record ReportTable(String key, List<String> columns, List<List<Object>> rows) {}
