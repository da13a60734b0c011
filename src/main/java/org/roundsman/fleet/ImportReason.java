package org.roundsman.fleet;

/**
 * Why rows of an upload are refused.
 *
 * @param column empty for a row as a whole
 * @param rows how many are refused for it, among other things
 */
public record ImportReason(String column, String reason, int rows) {}
