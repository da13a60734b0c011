package org.roundsman.web.api;

/**
 * Marks records that come in as JSON. They are read strictly: an unknown field, a field twice, or a text where a number
 * belongs is refused with its name.
 */
public interface ApiBody {}
