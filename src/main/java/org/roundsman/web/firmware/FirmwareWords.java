package org.roundsman.web.firmware;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.roundsman.firmware.FirmwareState;

/** Words for what pages of firmware show again and again. */
final class FirmwareWords {

    private FirmwareWords() {}

    /** The day in the time zone of a site, or empty. */
    static String day(Optional<Instant> at, ZoneId zone) {
        return at.map(moment -> LocalDate.ofInstant(moment, zone).toString()).orElse("");
    }

    static String days(OptionalLong days) {
        return days.isEmpty() ? "" : days.getAsLong() + (days.getAsLong() == 1 ? " day" : " days");
    }

    /** What draws the eye beside the status; empty for nothing. */
    static String flags(FirmwareState state) {
        return String.join(", ", flagsOf(state));
    }

    static List<String> flagsOf(FirmwareState state) {
        return Stream.of(state.security() ? "security fix missing" : "", state.mixed() ? "mixed site" : "")
                .filter(word -> !word.isEmpty())
                .toList();
    }

    static String or(String text, String otherwise) {
        return text.isEmpty() ? otherwise : text;
    }
}
