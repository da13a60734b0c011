package org.roundsman.notices;

import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What people may choose to be told of. The name is what tables store. */
public enum NoticeEvent {
    RAISE("raise", "something is wrong, or got worse"),
    CLEAR("clear", "what you were told of is over"),
    ESCALATION("escalation", "nobody has acknowledged it, and you are next");

    private final String word;
    private final String words;

    NoticeEvent(String word, String words) {
        this.word = word;
        this.words = words;
    }

    /** As forms and the API name it. */
    public String word() {
        return word;
    }

    /** What it means. */
    public String words() {
        return words;
    }

    /** The one of that word. */
    public static Optional<NoticeEvent> of(String word) {
        return Arrays.stream(values()).filter(event -> event.word.equals(word)).findFirst();
    }

    /** As tables hold them. */
    public static String stored(Collection<NoticeEvent> events) {
        return events.stream().sorted().map(Enum::name).collect(Collectors.joining(","));
    }

    /** What {@link #stored} made. */
    public static Set<NoticeEvent> read(String stored) {
        Set<NoticeEvent> events = EnumSet.noneOf(NoticeEvent.class);
        Arrays.stream(stored.split(","))
                .filter(name -> !name.isEmpty())
                .map(NoticeEvent::valueOf)
                .forEach(events::add);
        return events;
    }
}
