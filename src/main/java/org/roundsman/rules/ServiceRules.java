package org.roundsman.rules;

import java.util.List;
import org.roundsman.alarms.AlarmType;

/** Rules about the service itself. */
final class ServiceRules {

    private ServiceRules() {}

    static List<Rule> all() {
        return List.of(
                RuleWriting.figure(AlarmType.POLLER_LATE, "s")
                        .levels("5", "15", "60", null)
                        .clear("2")
                        .held(180, 180)
                        .because(
                                "By how much the rounds of the last minute began after their time, on average.",
                                "A minute late is a round missed at the usual pace: then silences are found late.",
                                RuleWriting.COMMON),
                RuleWriting.figure(AlarmType.STORING_BEHIND, "s")
                        .levels("30", "120", "600", null)
                        .clear("10")
                        .held(60, 60)
                        .because(
                                "The age of the oldest reading that waits for the database.",
                                "Pages show what was stored last, and no rule sees what waits.",
                                RuleWriting.COMMON),
                RuleWriting.figure(AlarmType.DISK_FILLING, "%")
                        .levels("85", "90", "95", "98")
                        .clear("83")
                        .held(60, 60)
                        .because(
                                "How full the disk is on which the data folder lies.",
                                "A database that cannot write stops. 85 % leaves time to act.",
                                RuleWriting.COMMON));
    }
}
