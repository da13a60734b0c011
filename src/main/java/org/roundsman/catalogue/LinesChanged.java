package org.roundsman.catalogue;

/**
 * Firmware lines were added, changed or removed; sent by CDI within the transaction, so that who must see it committed observes
 * it after success. That models changed is told by {@code fleet.FleetChanged}.
 */
public record LinesChanged() {}
