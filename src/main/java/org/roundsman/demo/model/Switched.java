package org.roundsman.demo.model;

import org.roundsman.demo.Fault;

/** A fault that one device has for a stretch of time, because somebody or the programme switched it. */
public record Switched(Fault fault, Stretch stretch) {

    private static final long FLAP = 600_000;
    private static final long FLAP_UP = 360_000;

    /** Whether it is in force then. */
    public boolean holds(long at) {
        return stretch.holds(at);
    }

    /** Whether it is a flapping that keeps the device down at that moment. */
    public boolean flapsDown(long at) {
        return fault == Fault.FLAPPING && holds(at) && (at - stretch.from()) % FLAP >= FLAP_UP;
    }

    /** Since when the flapping has kept it down; only while it does. */
    public long downSince(long at) {
        return stretch.from() + (at - stretch.from()) / FLAP * FLAP + FLAP_UP;
    }

    /** The last restart up to then that it brought about; {@link Long#MIN_VALUE} where it did not. */
    public long restartBy(long at) {
        if (stretch.from() > at) {
            return Long.MIN_VALUE;
        }
        return switch (fault) {
            case PORT_DEAD, POWER_OFF -> stretch.to() <= at ? stretch.to() : Long.MIN_VALUE;
            case FIRMWARE_UPDATED, UNIT_SWAPPED -> stretch.to() <= at ? stretch.to() : stretch.from();
            case RESTARTED, SETUP_NETWORK -> stretch.from();
            case FLAPPING -> stretch.from() + (Math.min(at, stretch.to()) - stretch.from()) / FLAP * FLAP;
            default -> Long.MIN_VALUE;
        };
    }

    /** How many milliseconds from one time to another it lasts. */
    public long overlap(long from, long to) {
        return Math.max(0, Math.min(to, stretch.to()) - Math.max(from, stretch.from()));
    }

    /** The same, ended at that time unless it has ended before. */
    public Switched endedAt(long at) {
        return new Switched(fault, new Stretch(stretch.from(), Math.min(stretch.to(), at)));
    }
}
