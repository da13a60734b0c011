package org.roundsman.rules;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.alarms.Severity;
import org.roundsman.fleet.CustomerScope;

/**
 * Other values of a rule, tried over what is stored.
 *
 * @param owner whose data it shows
 * @param targetName for whom the values would be; empty for all
 * @param done devices that were gone through
 * @param total devices to go through
 * @param trouble what went wrong; empty when nothing did
 * @param result once it is done
 */
public record DryRun(
        long id,
        CustomerScope owner,
        RuleBook.Wish wish,
        String targetName,
        Instant from,
        Instant to,
        State state,
        int done,
        int total,
        String startedBy,
        Instant startedAt,
        String trouble,
        Optional<Result> result) {

    /** How far it is. */
    public enum State {
        WAITING,
        RUNNING,
        DONE,
        CANCELLED,
        FAILED;

        public boolean over() {
            return this == DONE || this == CANCELLED || this == FAILED;
        }
    }

    /**
     * What came out.
     *
     * @param current with the values that hold now
     * @param tried with the values that are tried
     * @param basis what it was worked out from, in sentences
     */
    public record Result(Tally current, Tally tried, List<String> basis) {}

    /**
     * Alarms that there would have been.
     *
     * @param count all of them
     * @param bySeverity by the highest severity that each had
     * @param alarms the latest ones, newest first
     */
    public record Tally(int count, Map<Severity, Integer> bySeverity, List<TriedAlarm> alarms) {

        /** Whether some are counted only. */
        public boolean cut() {
            return alarms.size() < count;
        }
    }
}
