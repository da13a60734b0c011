package org.roundsman.web.device;

/**
 * A name and what was read under it.
 *
 * @param note smaller, under the value, or empty
 */
public record Figure(String name, String value, String note) {}
