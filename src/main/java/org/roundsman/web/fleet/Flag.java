package org.roundsman.web.fleet;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.warranty.CoverStatus;
import org.roundsman.web.page.Words;

/**
 * How something stands that people decide on, as it is shown: a shape and a word, never the colour alone.
 *
 * @param note what explains it, or empty
 */
public record Flag(Tone tone, String text, String note) {

    /** How much it asks for, the least first; the name in small letters is that of its shape. */
    public enum Tone {
        /** Nothing to do. */
        WELL,
        /** Otherwise than usual, and somebody wants it so. */
        ASIDE,
        /** Not known: something has to be entered or read. */
        OPEN,
        /** To be planned. */
        SOON,
        /** Due, or over. */
        DUE;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    static final Comparator<Flag> WORST_FIRST =
            Comparator.comparing((Flag flag) -> flag.tone()).reversed();

    /** What stands before a status: how many of all; nothing of the only one. */
    static String some(int some, int all) {
        if (some == all) {
            return all == 1 ? "" : "all " + Words.count(all) + " ";
        }
        return Words.count(some) + " ";
    }

    static Tone tone(FirmwareStatus status) {
        return switch (status) {
            case CURRENT -> Tone.WELL;
            case BEHIND -> Tone.SOON;
            case WITHDRAWN -> Tone.DUE;
            case AHEAD_OF_POLICY, EXCEPTED -> Tone.ASIDE;
            case NOT_KNOWN -> Tone.OPEN;
        };
    }

    static Tone tone(CoverStatus status) {
        return switch (status) {
            case COVERED -> Tone.WELL;
            case ENDS_WITHIN_30, ENDS_WITHIN_60, ENDS_WITHIN_90, ENDS_WITHIN_180 -> Tone.SOON;
            case ENDED -> Tone.DUE;
            case MISSING -> Tone.OPEN;
        };
    }

    /** Of one device. */
    public static Flag of(FirmwareStatus status, String version) {
        return new Flag(tone(status), status.word(), version);
    }

    /**
     * Of one device.
     *
     * @param lastDay that is covered, where there is one
     */
    public static Flag of(CoverStatus status, Optional<LocalDate> lastDay) {
        String day = lastDay.map(last -> (status == CoverStatus.ENDED ? "on " : "until ") + last)
                .orElse("");
        return new Flag(tone(status), status.word(), day);
    }
}
