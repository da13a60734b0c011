package org.roundsman.firmware.upgrade;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import javax.sql.DataSource;
import org.roundsman.firmware.store.ChangeTable;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.EventSearch.Numbered;
import org.roundsman.timeline.PastEvents;

/** Goes through the timeline and keeps a record of each change of firmware. Goes on where it stopped, also after a restart. */
public final class Noticing {

    /** As the fleet titles that event. */
    private static final String TITLE = "Firmware changed";

    private static final int PIECE = 1_000;

    /** Numbers are given before events are committed: so many are looked at once more. */
    private static final int AGAIN = 200;

    private static final Duration RESTARTS = Duration.ofHours(6);

    private final PastEvents events;
    private final ChangeTable table;

    public Noticing(DataSource database) {
        this.events = new PastEvents(database);
        this.table = new ChangeTable(database);
    }

    /**
     * Looks at what is new.
     *
     * @return whether any device said something about itself that it had not said before
     */
    public boolean look(Instant now) {
        long last = table.lookedAt();
        long next = Math.max(0, last - AGAIN);
        Instant oldest = now;
        List<Numbered> piece = events.after(next, List.of(EventKind.FACT_CHANGED), PIECE);
        while (!piece.isEmpty()) {
            for (Numbered one : piece) {
                oldest = kept(one) && one.event().at().isBefore(oldest)
                        ? one.event().at()
                        : oldest;
                next = one.id();
            }
            table.lookedAt(next);
            piece = piece.size() < PIECE ? List.of() : events.after(next, List.of(EventKind.FACT_CHANGED), PIECE);
        }
        Instant lately = now.minus(RESTARTS);
        table.findRestarts(oldest.isBefore(lately) ? oldest : lately);
        return next > last;
    }

    private boolean kept(Numbered one) {
        boolean change = one.event().title().equals(TITLE)
                && !one.event().old().isEmpty()
                && !one.event().fresh().isEmpty();
        return change
                && table.add(
                        one.id(),
                        one.event().deviceId(),
                        one.event().at(),
                        one.event().old(),
                        one.event().fresh());
    }
}
