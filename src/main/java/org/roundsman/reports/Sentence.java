package org.roundsman.reports;

/**
 * A sentence of the summary.
 *
 * @param key of its words
 * @param anchor id of the section that holds the figure it rests on
 */
public record Sentence(String key, String text, String anchor) {}
