package org.roundsman.rules;

import java.util.List;
import org.roundsman.alarms.AlarmType;

/** Rules about what people decided and entered: firmware policy and warranty. */
final class RecordRules {

    private RecordRules() {}

    static List<Rule> all() {
        return List.of(
                RuleWriting.elsewhere(AlarmType.FIRMWARE_WITHDRAWN, "warning")
                        .because(
                                "The firmware that each device says it runs, against the firmware policy.",
                                "Users are served today; a release that was withdrawn, or that lacks a security fix, is a"
                                        + " risk to plan away, and comes after what is broken now. One alarm a site: one"
                                        + " visit mends them all.",
                                RuleWriting.COMMON),
                RuleWriting.elsewhere(AlarmType.COVER_ENDING, "warning")
                        .because(
                                "The last day of warranty of each device of the site, from its terms and contracts.",
                                "Thirty days leave time to have a fault mended while it costs nothing. One alarm a site.",
                                RuleWriting.COMMON));
    }
}
