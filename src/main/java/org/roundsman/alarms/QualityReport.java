package org.roundsman.alarms;

import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * How good the alarms were over a stretch of time: few enough to be acted on, none of them noise. Counted are raises of
 * alarms that no other alarm explains and that never lay in planned work.
 *
 * @param technicians for how many people rates are worked out, at least 1
 * @param rules types with the most alarms, at most ten
 * @param devices devices with the most alarms, at most ten
 * @param topAlarms share that the ten alarms with the most raises have of the load, 0 to 1
 */
public record QualityReport(
        Instant from,
        Instant to,
        int technicians,
        Load load,
        Floods floods,
        List<Share> rules,
        List<Share> devices,
        double topAlarms,
        Noise noise,
        Stale stale,
        Mix mix) {

    public QualityReport {
        rules = List.copyOf(rules);
        devices = List.copyOf(devices);
    }

    /**
     * How many there were; rates and bounds are for one technician.
     *
     * @param alarms of all technicians
     * @param largest most alarms within any ten minutes
     * @param crowdedPeriods share of the stretch's periods of ten minutes with more than 10, 0 to 1
     * @param crowdedHours hours with more than 30
     * @param crowdedHoursShare share of such hours, 0 to 1
     */
    public record Load(
            long alarms,
            double perDay,
            double perHour,
            double perTenMinutes,
            double largest,
            double crowdedPeriods,
            long crowdedHours,
            double crowdedHoursShare) {}

    /** From the moment that there were more than 10 alarms within ten minutes until there were fewer than 5. */
    public record Flood(Instant from, Instant to, int alarms) {
        public Duration length() {
            return Duration.between(from, to);
        }
    }

    /** @param share of the time, 0 to 1 */
    public record Floods(List<Flood> all, double share) {
        public Floods {
            all = List.copyOf(all);
        }
    }

    /**
     * What one source has of the load.
     *
     * @param id of the device or alarm; 0 where the name says it all
     * @param share 0 to 1
     */
    public record Share(long id, String name, long alarms, double share) {}

    /**
     * Alarms that came and went.
     *
     * @param chattering alarms that were raised three times or more within 60 s, with how many raises each had in all
     * @param fleeting raises that were clear again within 60 s
     */
    public record Noise(List<Share> chattering, long fleeting) {
        public Noise {
            chattering = List.copyOf(chattering);
        }
    }

    /**
     * Alarms that were active for more than 24 h.
     *
     * @param now at the end of the stretch
     * @param worstDay the most on any day (UTC) of the stretch
     */
    public record Stale(List<Share> now, long worstDay) {
        public Stale {
            now = List.copyOf(now);
        }
    }

    /** Shares by the worst severity of each, 0 to 1: minor and less, major, critical. */
    public record Mix(double low, double medium, double high) {}
}
