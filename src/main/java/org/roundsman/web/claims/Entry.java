package org.roundsman.web.claims;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.InputRejected;

/** Reads what forms send. */
final class Entry {

    private Entry() {}

    /** Forms that leave a field out send null. */
    static String text(String value) {
        return value == null ? "" : value;
    }

    /**
     * An id; null where nothing is chosen.
     *
     * @throws InputRejected when it is none
     */
    static Long id(String field, String value) {
        try {
            return text(value).isBlank() ? null : Long.valueOf(value.strip());
        } catch (NumberFormatException e) {
            throw new InputRejected(Map.of(field, "choose one of the list"));
        }
    }

    /** A whole number. */
    static int number(String field, String value) {
        try {
            return Integer.parseInt(text(value).strip());
        } catch (NumberFormatException e) {
            throw new InputRejected(Map.of(field, "a whole number"));
        }
    }

    static Optional<LocalDate> day(String field, String value) {
        try {
            return text(value).isBlank() ? Optional.empty() : Optional.of(LocalDate.parse(value.strip()));
        } catch (DateTimeException e) {
            throw new InputRejected(Map.of(field, "a day, such as 2026-03-29"));
        }
    }

    /** A moment by the clock of that zone; null where none is given. Of what the clock shows twice, the first. */
    static Instant moment(String field, String value, ZoneId zone) {
        try {
            return text(value).isBlank()
                    ? null
                    : LocalDateTime.parse(value.strip()).atZone(zone).toInstant();
        } catch (DateTimeException e) {
            throw new InputRejected(Map.of(field, "a day and a time, such as 2026-03-29 22:30"));
        }
    }

    /** A moment as such a field shows it. */
    static String field(Instant at, ZoneId zone) {
        return at.atZone(zone).toLocalDateTime().truncatedTo(ChronoUnit.MINUTES).toString();
    }

    /**
     * A room or site out of a list, such as {@code room-3} or {@code site-7}.
     *
     * @param room null where a site or nothing was chosen
     * @param site null where a room or nothing was chosen
     */
    record Where(Long room, Long site) {
        static Where of(String value) {
            String text = text(value).strip();
            if (text.startsWith("room-")) {
                return new Where(id("where", text.substring(5)), null);
            }
            return text.startsWith("site-") ? new Where(null, id("where", text.substring(5))) : new Where(null, null);
        }
    }

    /** One of a list. */
    record Choice(String value, String text, boolean chosen) {}
}
