package org.roundsman.web.triage;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.fleet.InputRejected;

/**
 * What the forms beside an alarm send.
 *
 * @param text note
 * @param length how long to shelve: one of {@link #LENGTHS}
 * @param until or until when, in the site's time
 * @param reason why it is shelved
 */
record ActForm(
        @RestForm String text,
        @RestForm String length,
        @RestForm String until,
        @RestForm String reason) {

    static final ActForm EMPTY = new ActForm("", "PT4H", "", "");

    /** The end of the shelf is a wall clock's, not a length. */
    private static final String MORNING = "morning";

    private static final LocalTime EARLY = LocalTime.of(8, 0);

    /** A choice of the list. */
    record Length(String value, String words, boolean chosen) {}

    private static final Map<String, String> LENGTHS = new java.util.LinkedHashMap<>();

    static {
        LENGTHS.put("PT1H", "1 hour");
        LENGTHS.put("PT4H", "4 hours");
        LENGTHS.put(MORNING, "until 08:00 tomorrow");
        LENGTHS.put("PT72H", "3 days");
        LENGTHS.put("PT168H", "a week");
        LENGTHS.put("", "until the time below");
    }

    public List<Length> lengths() {
        return LENGTHS.entrySet().stream()
                .map(one ->
                        new Length(one.getKey(), one.getValue(), one.getKey().equals(length)))
                .toList();
    }

    String words() {
        return Objects.toString(text, "").strip();
    }

    String why() {
        return Objects.toString(reason, "").strip();
    }

    /**
     * When the shelf ends.
     *
     * @throws InputRejected when that cannot be told
     */
    Instant end(ZoneId zone, Instant now) {
        String chosen = Objects.toString(length, "");
        if (chosen.equals(MORNING)) {
            return ZonedDateTime.of(now.atZone(zone).toLocalDate().plusDays(1), EARLY, zone)
                    .toInstant();
        }
        if (!chosen.isEmpty() && LENGTHS.containsKey(chosen)) {
            return now.plus(Duration.parse(chosen));
        }
        try {
            return LocalDateTime.parse(Objects.toString(until, "")).atZone(zone).toInstant();
        } catch (DateTimeParseException e) {
            throw new InputRejected(Map.of("until", "choose a length, or enter day and time"));
        }
    }
}
