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
    FAN_FAILED,
    /** The agent answers nobody; the device goes on passing traffic, power and LLDP frames. */
    AGENT_SILENT,
    /**
     * The device hangs: it answers nobody and passes nothing on, so that what is behind it cannot be reached. Its links and
     * the power that it feeds stay; it goes on where it was when the fault ends.
     */
    HUNG,
    /** Somebody switched the power of the access point's switch port off; as {@link #PORT_DEAD} for the device itself. */
    POWER_OFF,
    /** The cable towards the gateway carries no data: no link at either end, while power, if the port feeds any, stays. */
    LINK_DOWN,
    /** The device restarts once, when the fault begins. */
    RESTARTED,
    /** The channel is busy for a little more than half of the time. */
    CHANNEL_HALF,
    /** The channel is busy for three quarters of the time. */
    CHANNEL_BUSY,
    /** More clients on one radio than it serves well. */
    CLIENTS_MANY,
    /** Nearly half of the frames get through only after a retry. */
    RETRIES_MANY,
    /** Many damaged frames on the uplink port. */
    PORT_ERRORS,
    CPU_BUSY,
    MEMORY_SHORT,
    /** The access points have one network, the last one, less than the rest of the time. */
    NETWORK_REMOVED,
    /** The device restarts when the fault begins, and has its open network for setting up on the air from then on. */
    SETUP_NETWORK,
    /** Two requests of a hundred get lost. */
    LOSSY,
    /** Another unit of the same model stands in the place: it answers with a serial number of its own, and has just started. */
    UNIT_SWAPPED;

    private static final int SILENCING = mask(UPLINK_LOST, PORT_DEAD, AGENT_SILENT, HUNG, POWER_OFF, LINK_DOWN);

    /** This fault as one bit of a set. */
    public int bit() {
        return 1 << ordinal();
    }

    /** Whether a set of bits holds it. */
    public boolean in(int bits) {
        return (bits & bit()) != 0;
    }

    /** Whether a set of bits holds one for which nobody gets an answer as long as it lasts. */
    public static boolean silences(int bits) {
        return (bits & SILENCING) != 0;
    }

    /** Whether the device has no power of its own while it lasts. */
    public boolean cutsPower() {
        return this == PORT_DEAD || this == POWER_OFF;
    }

    private static int mask(Fault... faults) {
        int bits = 0;
        for (Fault fault : faults) {
            bits |= fault.bit();
        }
        return bits;
    }
}
