package org.roundsman.alarms;

/** What is behind an alarm, as worked out from the site's topology. The name is what tables store. */
public enum CauseKind {
    VIEW_LOST("we are blind", ""),
    UPLINK_LOST("uplink or gateway lost", ""),
    SWITCH_LOST(
            "switch lost",
            "Have somebody restart the switch. If it stays silent, drive with a spare: everything behind it waits for it."),
    SWITCH_POWER(
            "switch lost its power",
            "Have somebody at the site check the switch's plug, fuse and power supply; work on mains is for a licensed electrician."),
    PORT_NOT_DELIVERING(
            "switch port delivers no power",
            "Look at the port on the switch: switched off, out of power budget, or a fault. Switch its power off and on; then cable and device."),
    /** The port is as it should be; power is offered, and nobody takes it. */
    NO_POWER_DRAWN(
            "nothing draws power from the switch port",
            "The port offers power: look at the cable, its plugs, the patch panel and the access point first, and at the port only if all of them are good."),
    LINK_DOWN("switch port has no link", "Check the cable and both its plugs, then the port and the device."),
    DEVICE_LOST(
            "device lost",
            "If nothing behind it answers and its switch port delivers power, switch that off and on once, so that the device restarts. If it stays silent: cable, then the device."),
    /** A gateway or switch that passes traffic on but does not answer us: whoever hangs on it is served. */
    MANAGEMENT_LOST(
            "management lost",
            "What hangs on it works, since traffic passes through it: do not switch it off. Look at its SNMP service, address and access list at the next visit, or restart it outside the service hours."),
    RESTARTED("restarted", ""),
    RADIO_OFF("radio off", ""),
    CREDENTIALS_REFUSED("credentials refused", ""),
    FLAPPING("comes and goes", ""),
    /** The alarm says it all: nothing had to be worked out. */
    ITSELF("", ""),
    NOT_SURE(
            "not sure", "The evidence does not point to one thing: begin with what the silent devices have in common.");

    private final String word;
    private final String advice;

    CauseKind(String word, String advice) {
        this.word = word;
        this.advice = advice;
    }

    /** The words on pages; empty where the alarm's own title says it all. */
    public String word() {
        return word;
    }

    /** What to do about it, where that is more than the alarm's own advice; else empty. */
    public String advice() {
        return advice;
    }
}
