package org.roundsman.rules.fold;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Locale;
import org.roundsman.alarms.AlarmType;
import org.roundsman.rules.Rule;
import org.roundsman.rules.ShippedRules;

/** Why an alarm is raised or clears, in a sentence with its figures. */
public final class Texts {

    private static final double THOUSAND = 1_000;
    /** From so many seconds on, minutes say more. */
    private static final double LONG = 120;

    private Texts() {}

    static String raised(AlarmType type, Decision.Raise raise, String also) {
        Rule rule = ShippedRules.of(type);
        return switch (rule.kind()) {
            case FACT -> also + held(raise.heldMillis());
            case COUNT -> also;
            case FIGURE, ELSEWHERE -> {
                boolean still = rule.low() ? raise.figure() > raise.threshold() : raise.figure() < raise.threshold();
                yield quantity(type, with(rule, raise.figure())) + ", "
                        + (still
                                ? "no longer as bad as before"
                                : raise.severity().word()
                                        + (rule.low() ? " at " : " from ")
                                        + with(rule, raise.threshold())
                                        + (rule.low() ? " or less" : " on"))
                        + held(raise.heldMillis()) + tail(also);
            }
        };
    }

    /** A figure with the quantity that it is one of. */
    private static String quantity(AlarmType type, String figure) {
        return switch (type) {
            case UTILISATION_HIGH -> "Utilisation " + figure;
            case CLIENTS_HIGH -> figure + " clients";
            case RETRIES_HIGH -> "Retried frames " + figure;
            case PORT_ERRORS -> "Damaged frames " + figure;
            case PORT_SLOW -> "Port at " + figure;
            case CPU_HIGH -> "Processor " + figure;
            case MEMORY_HIGH -> "Memory " + figure;
            case CLOCK_OFF -> "Clock off by " + figure;
            case POLLER_LATE -> "Rounds late by " + figure;
            case STORING_BEHIND -> "Storing behind by " + figure;
            case DISK_FILLING -> "Disk full to " + figure;
            default -> figure;
        };
    }

    static String cleared(AlarmType type, Decision.Clear clear) {
        Rule rule = ShippedRules.of(type);
        return switch (rule.kind()) {
            case FACT -> "As it should be again" + held(clear.heldMillis());
            case COUNT -> "Calm again.";
            case FIGURE, ELSEWHERE -> "Back at " + with(rule, clear.figure()) + held(clear.heldMillis());
        };
    }

    /** How often something happened lately, and what happened last. */
    static String counted(AlarmType type, int times, Duration window, String last) {
        String often = times == 1 ? "once" : times + " times";
        String what = type == AlarmType.FLAPPING
                ? "Fell silent " + often
                : often.substring(0, 1).toUpperCase(Locale.ROOT) + often.substring(1);
        return what + " within " + words(window) + "." + tail(last);
    }

    /** Why an alarm clears that rested on silences of a time in which nothing was seen. */
    static String unseen(int left, Duration window) {
        String rest = left == 0 ? "not once" : left == 1 ? "once" : left + " times";
        return "What was silent while we saw none of the devices counts no more; else it fell silent " + rest
                + " within " + words(window) + ".";
    }

    private static String held(long millis) {
        return millis < THOUSAND ? "." : ", for " + words(Duration.ofMillis(millis)) + ".";
    }

    private static String tail(String also) {
        return also.isEmpty() ? "" : " " + also;
    }

    private static String with(Rule rule, double figure) {
        if (rule.unit().equals("s") && figure >= LONG) {
            return words(Duration.ofSeconds(Math.round(figure)));
        }
        return figure(figure) + (rule.unit().isEmpty() ? "" : "\u00a0" + rule.unit());
    }

    /** A figure with no more digits than it deserves. */
    static String figure(double value) {
        int digits = Math.abs(value) >= 10 ? 0 : Math.abs(value) >= 1 ? 1 : 2;
        return new BigDecimal(value)
                .setScale(digits, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    static String words(Duration length) {
        if (length.toMinutes() < 2) {
            return length.toSeconds() + " s";
        }
        if (length.toDays() >= 2) {
            return length.toDays() + " days";
        }
        if (length.toMinutesPart() == 0) {
            return length.toHours() + " h";
        }
        return length.toHours() < 2
                ? length.toMinutes() + " min"
                : length.toHours() + " h " + length.toMinutesPart() + " min";
    }
}
