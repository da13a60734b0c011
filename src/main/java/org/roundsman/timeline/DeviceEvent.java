package org.roundsman.timeline;

import java.time.Instant;

/**
 * One thing that happened to a device.
 *
 * @param at when it happened, or was first seen
 * @param title what a person reads, such as {@code Firmware changed}
 * @param old value before, or empty
 * @param fresh value after, or empty
 * @param detail more lines, or empty
 */
public record DeviceEvent(
        long deviceId, Instant at, EventKind kind, String title, String old, String fresh, String detail) {

    /** A change from one value to another. */
    public static DeviceEvent change(
            long deviceId, Instant at, EventKind kind, String title, String old, String fresh) {
        return new DeviceEvent(deviceId, at, kind, title, old, fresh, "");
    }
}
