package org.roundsman.rules;

import java.util.List;
import org.roundsman.alarms.AlarmType;

/** Rules about radios and networks. */
final class AirRules {

    private static final int QUARTER = 900;

    private AirRules() {}

    static List<Rule> all() {
        return List.of(radioOff(), utilisation(), clients(), retries(), setUpNetwork());
    }

    private static Rule radioOff() {
        return RuleWriting.fact(AlarmType.RADIO_OFF, "minor")
                .held(120, 60)
                .because(
                        "The device's radios in each round that it answers: one is off when it was there and is"
                                + " missing while others are not, when it had a channel and has none, or when it"
                                + " measured noise or a busy channel and measures neither any more. One that was"
                                + " never seen on the air raises nothing.",
                        "Three rounds at the usual pace. A radio that must listen for radar first is off the air"
                                + " for 60 s, on some channels for 10 min: there this alarm comes and clears.",
                        "Listening times from memory of ETSI EN 301 893; your regulator's rules hold.");
    }

    private static Rule utilisation() {
        return RuleWriting.figure(AlarmType.UTILISATION_HIGH, "%")
                .levels("50", "70", "85", null)
                .clear("45")
                .held(QUARTER, QUARTER)
                .because(
                        "Share of time in which the radio senses its channel busy.",
                        "From about half on, frames wait noticeably; beyond 85 % hardly anything gets through in"
                                + " time. Held for a quarter of an hour, so that a download is no alarm.",
                        RuleWriting.COMMON);
    }

    private static Rule clients() {
        return RuleWriting.figure(AlarmType.CLIENTS_HIGH, "")
                .levels("50", "75", "120", null)
                .clear("45")
                .held(QUARTER, QUARTER)
                .because(
                        "Clients of each radio.",
                        "How many a radio serves well depends on it and on what they do: set it by model. These"
                                + " are for a two-stream radio with ordinary office use.",
                        RuleWriting.COMMON);
    }

    private static Rule retries() {
        return RuleWriting.figure(AlarmType.RETRIES_HIGH, "%")
                .levels("25", "40", "60", null)
                .clear("20")
                .held(QUARTER, QUARTER)
                .because(
                        "Frames delivered only after a retry, of all that the radio delivered.",
                        "Some retries are normal; from a quarter on, calls suffer.",
                        RuleWriting.COMMON);
    }

    private static Rule setUpNetwork() {
        return RuleWriting.fact(AlarmType.SETUP_NETWORK_OPEN, "minor")
                .held(1_800, 300)
                .with(RuleField.WORDS, "setup, set-up")
                .because(
                        "The names of the networks that the device carries. By the name alone: whether the"
                                + " network is open cannot be read.",
                        "Half an hour is enough to set a device up. Add what your makers' names begin with.",
                        RuleWriting.COMMON);
    }
}
