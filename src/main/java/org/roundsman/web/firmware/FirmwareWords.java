package org.roundsman.web.firmware;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalLong;
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
        String security = state.security() ? "security fix missing" : "";
        String mixed = state.mixed() ? "mixed site" : "";
        return security.isEmpty() || mixed.isEmpty() ? security + mixed : security + ", " + mixed;
    }

    static String or(String text, String otherwise) {
        return text.isEmpty() ? otherwise : text;
    }
}
