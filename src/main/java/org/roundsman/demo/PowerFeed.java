package org.roundsman.demo;

/** Where a device gets its power from. */
public enum PowerFeed {
    /** The switch port that it hangs on. */
    PORT,
    /** A box of its own between switch port and device, for units that take no standard power from a port. */
    INJECTOR,
    /** A socket in the wall. */
    MAINS
}
