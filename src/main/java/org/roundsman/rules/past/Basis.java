package org.roundsman.rules.past;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.roundsman.alarms.AlarmType;

/** What a try rested on, for those who read its result. */
final class Basis {

    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm 'UTC'", Locale.UK).withZone(ZoneOffset.UTC);

    private final AlarmType type;
    private final Instant from;
    private Instant firstRaw = Instant.MAX;
    private Instant lastRaw = Instant.MIN;
    private boolean events;

    Basis(AlarmType type, Instant from) {
        this.type = type;
        this.from = from;
    }

    /** A device has raw readings from then on. */
    void raw(Instant first) {
        firstRaw = first.isBefore(firstRaw) ? first : firstRaw;
        lastRaw = first.isAfter(lastRaw) ? first : lastRaw;
    }

    void events() {
        events = true;
    }

    List<String> words() {
        List<String> words = new ArrayList<>();
        if (events) {
            words.add("Worked out from the timelines of the devices.");
            return words;
        }
        boolean allRaw = !lastRaw.isAfter(from.plus(Duration.ofHours(1)));
        if (firstRaw.equals(Instant.MAX)) {
            words.add("No single readings are kept of this time.");
            words.add(older());
        } else if (allRaw) {
            words.add("Worked out from every single reading, by the same rules that run live.");
        } else {
            words.add("From " + TIME.format(firstRaw)
                    + " on every single reading was gone through, by the same rules that"
                    + " run live"
                    + (lastRaw.isAfter(firstRaw.plus(Duration.ofHours(1)))
                            ? "; of some devices from " + TIME.format(lastRaw) + " on."
                            : "."));
            words.add(older());
        }
        return words;
    }

    private String older() {
        return switch (type) {
            case FLAPPING -> "Before that it is known from the spans when devices fell silent.";
            case CLOCK_OFF, PORT_SLOW ->
                "Before that nothing is kept that this rule reads: what happened then is missing here.";
            default ->
                "Before that only means of quarter hours are kept. There a figure counts as held for the whole quarter"
                        + " hour, so times to raise and to clear count in steps of 15 minutes, and shorter peaks and"
                        + " dips do not show.";
        };
    }
}
