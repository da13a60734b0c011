package org.roundsman.demo;

/** What can go wrong in the invented fleet. */
public enum Fault {
    /** The line of the whole site is down: none of its agents answers, and all run on. */
    UPLINK_LOST,
    /**
     * The device has no power, an access point because its switch port feeds none: the agent is silent, and restarts when
     * power is back. What a switch without power feeds has none either.
     */
    PORT_DEAD,
    /** More people and more air time than the radio can serve: utilisation above 85 %. */
    ROOM_SATURATED,
    /** The device restarts again and again. */
    FLAPPING,
    /** Runs a firmware line that it should not. */
    FIRMWARE_STALE,
    /** The device takes other credentials than the service was told. */
    CREDENTIAL_WRONG,
    /** Radio 1 is switched off. */
    RADIO_OFF,
    /** The device's clock starts at 1970 with each restart. */
    CLOCK_1970,
    /** The uplink port came up with 100 Mb/s where it should have a gigabit. */
    PORT_SLOW,
    /** The device was updated to the next firmware, for which it restarted, and goes back to the old one at the end. */
    FIRMWARE_UPDATED,
    /** The access points have one network more than the rest of the time. */
    NETWORK_ADDED,
    /** Radar was seen on a channel that must be left to it, and the radio has moved to another one. */
    RADAR_SEEN,
    /** The fan of a switch stands still. */
    FAN_FAILED;

    /** This fault as one bit of a set. */
    public int bit() {
        return 1 << ordinal();
    }

    /** Whether a set of bits holds it. */
    public boolean in(int bits) {
        return (bits & bit()) != 0;
    }
}
