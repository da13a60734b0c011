package org.roundsman.discovery;

import org.roundsman.fleet.DeviceKind;

/**
 * What a person entered for one line of the list before it is adopted.
 *
 * @param findingId the line
 * @param kind null where it is not chosen yet
 */
public record Review(long findingId, boolean ticked, String name, DeviceKind kind, String place) {}
