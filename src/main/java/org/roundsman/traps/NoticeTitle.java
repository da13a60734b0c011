package org.roundsman.traps;

import java.util.Map;
import java.util.OptionalInt;

/**
 * What a notification is called on a timeline.
 *
 * @param text in its own words, such as {@code Link down: interface 10013}
 * @param link of one about a link: the same without the interface; empty for any other
 * @param port of one about a link: the interface's ifIndex; empty where it does not say it
 */
record NoticeTitle(String text, String link, OptionalInt port) {

    /** Of a notification that is about no link. */
    static NoticeTitle of(String text) {
        return new NoticeTitle(text, "", OptionalInt.empty());
    }

    /** With the name of the port in place of its number; a port that is not among these keeps the number. */
    String with(Map<Integer, String> ports) {
        String name = port.isPresent() ? ports.get(port.getAsInt()) : null;
        return name == null ? text : link + ": " + name;
    }
}
