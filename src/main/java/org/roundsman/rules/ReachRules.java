package org.roundsman.rules;

import java.util.List;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Severity;

/** Rules about whether devices can be reached, and stay so. */
final class ReachRules {

    private static final int HOUR = 3_600;

    private ReachRules() {}

    static List<Rule> all() {
        return List.of(silent(), uplinkLost(), viewLost(), refused(), restarted(), flapping());
    }

    private static Rule silent() {
        return RuleWriting.elsewhere(AlarmType.DEVICE_SILENT, "major")
                .carrying(Severity.CRITICAL, Severity.MINOR)
                .because(
                        "The outcome of each round: three in a row without an answer.",
                        "One lost datagram is no outage, and three rounds are three minutes at the usual pace."
                                + " How many rounds is the same for all, since availability is counted by it. A"
                                + " switch or gateway takes down what hangs on it, so that it is critical; where it"
                                + " passes traffic on and only its management is lost, it is minor. A severity that"
                                + " somebody sets holds for all of them.",
                        RuleWriting.COMMON);
    }

    private static Rule uplinkLost() {
        return RuleWriting.elsewhere(AlarmType.UPLINK_LOST, "critical")
                .because(
                        "The topology of the site and who of it still answers.",
                        "When all that was asked at a site is silent, nobody there is served.",
                        "Severity after ITU-T X.733: critical where the service is gone.");
    }

    private static Rule viewLost() {
        return RuleWriting.elsewhere(AlarmType.VIEW_LOST, "critical")
                .because(
                        "Sites of several customers that fall silent at the same time.",
                        "Then our own line is the likely fault, and nothing that we say of the sites can be"
                                + " trusted.",
                        "Severity after ITU-T X.733.");
    }

    private static Rule refused() {
        return RuleWriting.elsewhere(AlarmType.CREDENTIALS_REFUSED, "minor")
                .because(
                        "The outcome of each round: the device answers and rejects us.",
                        "Users are served; it is we who are blind.",
                        "Severity after ITU-T X.733: minor where the service goes on.");
    }

    private static Rule restarted() {
        return RuleWriting.count(AlarmType.DEVICE_RESTARTED, HOUR)
                .levels("1", "3", null, null)
                .clear("0")
                .because(
                        "Restarts on the device's timeline, which are found from its uptime (sysUpTime, RFC 3418).",
                        "One restart is worth a look and seldom a fault; three within an hour are one. It clears"
                                + " after a calm hour.",
                        RuleWriting.COMMON);
    }

    private static Rule flapping() {
        return RuleWriting.count(AlarmType.FLAPPING, HOUR)
                .levels("2", "3", "6", null)
                .clear("0")
                .because(
                        "How often the device fell silent, each time after it had answered again. What was silent while"
                                + " we saw none of the devices does not count.",
                        "Twice within an hour is no chance: with 2 % of all rounds lost, three in a row are lost"
                                + " once in 125,000 rounds. It clears when an hour passed without.",
                        "The chance is arithmetic; the counts are common practice, no source.");
    }
}
