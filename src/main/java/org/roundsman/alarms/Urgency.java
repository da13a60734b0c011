package org.roundsman.alarms;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;

/**
 * In which order a person looks at alarms: first whether we see at all, then people who suffer now, service hours, severity,
 * and the longest first. The order and its bands are our own; no standard gives one. Pure.
 */
public final class Urgency {

    /** What decides between two alarms. */
    public enum Reason {
        /** While we are blind, everything else may be a mistake of ours. */
        BLIND("what the others say may be wrong while we are blind"),
        PEOPLE("more people suffer now"),
        SERVICE_HOURS("in service hours"),
        SEVERITY("more severe"),
        AGE("longer"),
        /** They are alike in all of that. */
        NOTHING("");

        private final String word;

        Reason(String word) {
            this.word = word;
        }

        /** The words on pages. */
        public String word() {
            return word;
        }
    }

    /** People are counted in bands, so that one more guest does not outweigh a critical fault. */
    private static final int[] BANDS = {1, 10, 30, 100};

    private static final Comparator<OpenAlarm> BLIND = Comparator.comparing(Urgency::seeing);
    private static final Comparator<OpenAlarm> PEOPLE =
            Comparator.comparingInt(Urgency::band).reversed();
    private static final Comparator<OpenAlarm> HOURS =
            Comparator.comparing(alarm -> !alarm.impact().serviceHours());
    private static final Comparator<OpenAlarm> SEVERITY =
            Comparator.comparing(OpenAlarm::severity).reversed();
    private static final Comparator<OpenAlarm> AGE = Comparator.comparing(OpenAlarm::began);

    private static final Comparator<OpenAlarm> ORDER = BLIND.thenComparing(PEOPLE)
            .thenComparing(HOURS)
            .thenComparing(SEVERITY)
            .thenComparing(AGE)
            .thenComparingLong(OpenAlarm::id);

    private Urgency() {}

    /** The most urgent first; the order of any two never depends on the others. */
    public static List<OpenAlarm> sorted(List<OpenAlarm> alarms) {
        return alarms.stream().sorted(ORDER).toList();
    }

    /** Why one stands above the other in that order. */
    public static Reason between(OpenAlarm above, OpenAlarm below) {
        if (BLIND.compare(above, below) != 0) {
            return Reason.BLIND;
        }
        if (PEOPLE.compare(above, below) != 0) {
            return Reason.PEOPLE;
        }
        if (HOURS.compare(above, below) != 0) {
            return Reason.SERVICE_HOURS;
        }
        if (SEVERITY.compare(above, below) != 0) {
            return Reason.SEVERITY;
        }
        return AGE.compare(above, below) != 0 ? Reason.AGE : Reason.NOTHING;
    }

    private static boolean seeing(OpenAlarm alarm) {
        return alarm.key().type() != AlarmType.VIEW_LOST;
    }

    /**
     * People who suffer, in a band: 0, 1 to 9, 10 to 29, 30 to 99, 100 and more. With a warning or a minor fault the service
     * goes on, so nobody suffers yet. Where nobody knows how many there are, an access point counts as somebody.
     */
    static int band(OpenAlarm alarm) {
        if (alarm.severity() == Severity.WARNING || alarm.severity() == Severity.MINOR) {
            return 0;
        }
        OptionalInt clients = alarm.impact().clients();
        int people = clients.orElse(alarm.impact().devices() > 0 ? 1 : 0);
        int band = 0;
        while (band < BANDS.length && people >= BANDS[band]) {
            band++;
        }
        return band;
    }
}
