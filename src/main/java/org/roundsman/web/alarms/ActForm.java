package org.roundsman.web.alarms;

import java.util.List;
import org.jboss.resteasy.reactive.RestForm;

/**
 * What somebody entered beside an alarm.
 *
 * @param text note
 * @param hours how long it is to be on the shelf
 * @param reason of the shelf
 * @param back page of ours to go back to, or empty for the alarm's own
 */
record ActForm(
        @RestForm String text,
        @RestForm String hours,
        @RestForm String reason,
        @RestForm String back) {

    static final ActForm EMPTY = new ActForm("", "24", "", "");

    private static final List<Shelf> SHELVES = List.of(
            new Shelf("1", "1 hour"),
            new Shelf("4", "4 hours"),
            new Shelf("24", "1 day"),
            new Shelf("72", "3 days"),
            new Shelf("168", "7 days"),
            new Shelf("720", "30 days"));

    ActForm {
        text = text == null ? "" : text;
        hours = hours == null ? "" : hours;
        reason = reason == null ? "" : reason;
        back = back == null ? "" : back;
    }

    /** A length of time to choose. */
    record Shelf(String hours, String words) {}

    public List<Shelf> shelves() {
        return SHELVES;
    }

    /** Hours on the shelf; 0 where none of the list was chosen. */
    int shelfHours() {
        return SHELVES.stream().anyMatch(shelf -> shelf.hours().equals(hours)) ? Integer.parseInt(hours) : 0;
    }
}
