package org.roundsman.rules;

import java.util.List;
import org.roundsman.alarms.AlarmType;

/** Rules about the device as a whole. */
final class DeviceRules {

    private static final int QUARTER = 900;

    private DeviceRules() {}

    static List<Rule> all() {
        return List.of(portSlow(), portErrors(), cpu(), memory(), clock(), configuration());
    }

    private static Rule portSlow() {
        return RuleWriting.figure(AlarmType.PORT_SLOW, "% of its rating")
                .low()
                .levels(null, "10", "1", null)
                .clear("15")
                .held(120, 120)
                .because(
                        "Speed of the uplink port in per cent of its rating. The rating is the fastest speed ever"
                                + " seen on that port; where another device of the same model ran at 1 Gb/s, it is"
                                + " at least that. Nothing is judged below a rating of 1 Gb/s.",
                        "100 Mb/s on a gigabit port is the sign of a bad pair in the cable (10 %); 10 Mb/s is 1 %.",
                        "1000BASE-T needs all four pairs and 100BASE-TX two: IEEE 802.3, from memory.");
    }

    private static Rule portErrors() {
        return RuleWriting.figure(AlarmType.PORT_ERRORS, "/s")
                .levels("0.1", "1", "10", null)
                .clear("0.05")
                .held(QUARTER, QUARTER)
                .because(
                        "Damaged frames per second on the uplink port, both ways.",
                        "A good cable damages next to none: a bit error rate of 10⁻¹⁰ is allowed, which at"
                                + " 100 Mb/s of traffic is one frame in 100 s.",
                        "Bit error rate of 1000BASE-T: IEEE 802.3, from memory. Thresholds: common practice, no"
                                + " source.");
    }

    private static Rule cpu() {
        return RuleWriting.figure(AlarmType.CPU_HIGH, "%")
                .levels("85", "95", null, null)
                .clear("80")
                .held(QUARTER, QUARTER)
                .because(
                        "Load of the device's processor.",
                        "Short peaks are normal; a quarter of an hour is none.",
                        RuleWriting.COMMON);
    }

    private static Rule memory() {
        return RuleWriting.figure(AlarmType.MEMORY_HIGH, "%")
                .levels("85", "92", "97", null)
                .clear("80")
                .held(QUARTER, QUARTER)
                .because(
                        "Share of the device's memory that is in use.",
                        "What creeps up to here is mostly a leak, and the device restarts by itself one day.",
                        RuleWriting.COMMON);
    }

    private static Rule clock() {
        return RuleWriting.figure(AlarmType.CLOCK_OFF, "s")
                .levels("60", "300", null, null)
                .clear("30")
                .held(600, 120)
                .because(
                        "The device's own clock against ours, whichever is ahead.",
                        "A minute makes logs hard to match; at five minutes other systems reject what it signs"
                                + " and certificates seem out of date.",
                        "Five minutes is the usual clock skew of Kerberos (RFC 4120); the rest is common practice,"
                                + " no source.");
    }

    private static Rule configuration() {
        return RuleWriting.count(AlarmType.CONFIGURATION_CHANGED, 3_600)
                .levels("1", null, null, null)
                .clear("0")
                .because(
                        "The device's timeline: firmware changed, a radio or a network appeared, disappeared or has"
                                + " another name.",
                        "Somebody should know of it. It clears an hour after the last change.",
                        RuleWriting.COMMON);
    }
}
