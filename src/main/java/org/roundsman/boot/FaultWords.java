package org.roundsman.boot;

import java.time.Duration;
import org.roundsman.demo.Fault;

/** Words for faults of the invented fleet. */
final class FaultWords {

    private static final int LONG_SECONDS = 120;

    private FaultWords() {}

    static String of(Fault fault) {
        return switch (fault) {
            case UPLINK_LOST -> "no line: nothing gets through, the device runs on";
            case PORT_DEAD -> "no power from the switch port (a switch: none at all, and what it feeds goes with it)";
            case ROOM_SATURATED -> "room with more people than air time: channel busy for 90 % of the time";
            case FLAPPING -> "restarts again and again";
            case FIRMWARE_STALE -> "old firmware line";
            case CREDENTIAL_WRONG -> "takes other credentials than we have";
            case RADIO_OFF -> "radio 1 switched off";
            case CLOCK_1970 -> "clock starts at 1970 with each restart";
            case PORT_SLOW -> "port at 100 Mb/s in place of a gigabit";
            case FIRMWARE_UPDATED -> "updated to the next firmware, with a restart at begin and end";
            case NETWORK_ADDED -> "one more network (access points)";
            case RADAR_SEEN -> "radar on its 5 GHz channel, moved to channel 36 (access points on channels 52 to 144)";
            case FAN_FAILED -> "fan stands still (switches)";
            default -> ofLater(fault);
        };
    }

    private static String ofLater(Fault fault) {
        return switch (fault) {
            case AGENT_SILENT -> "answers nobody, but passes everything on";
            case HUNG -> "hangs: passes nothing on, its links and the power that it feeds stay";
            case POWER_OFF -> "power of its switch port switched off by somebody (access points fed by a port)";
            case LINK_DOWN -> "cable towards the gateway broken: no link, power stays";
            case RESTARTED -> "restarts once";
            case CHANNEL_HALF -> "channel busy for 55 % of the time (access points)";
            case CHANNEL_BUSY -> "channel busy for 75 % of the time (access points)";
            case CLIENTS_MANY -> "80 clients more on one radio (access points)";
            case RETRIES_MANY -> "45 % of frames on one radio only after a retry (access points)";
            case PORT_ERRORS -> "25 damaged frames a second on the uplink port";
            case CPU_BUSY -> "processor busy for 96 % of the time";
            case MEMORY_SHORT -> "95 % of the memory used";
            case NETWORK_REMOVED -> "guests' network gone (access points)";
            case SETUP_NETWORK -> "restarts, with its open set-up network on the air (access points)";
            case UNIT_SWAPPED -> "unit swapped: another one answers, with “-R” after the serial number";
            case LOSSY -> "2 % of requests get lost: not a fault to be told of";
            default -> throw new IllegalArgumentException("no words for " + fault);
        };
    }

    /** Such as {@code 8 min} or {@code 45 s}, never less than none. */
    static String in(Duration time) {
        long seconds = Math.max(0, time.toSeconds());
        return seconds < LONG_SECONDS ? seconds + " s" : (seconds + 30) / 60 + " min";
    }
}
