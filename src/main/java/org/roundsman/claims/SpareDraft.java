package org.roundsman.claims;

/**
 * A spare as entered. It lies in a room or at a site: exactly one of the two is given.
 *
 * @param modelId null where not known
 * @param roomId null at a site
 * @param siteId null in a room
 */
public record SpareDraft(String serial, Long modelId, Long roomId, Long siteId, String note) {}
