package org.roundsman.warranty;

import java.time.LocalDate;

/**
 * What became of a unit that left for good.
 *
 * @param word such as {@code scrapped}
 * @param since in the time zone of the unit
 */
public record UnitFate(String word, LocalDate since) {}
