package org.roundsman.reports;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/** What we did in the stretch, each list by time. */
public record WorkDone(List<PlannedWork> planned, List<Replaced> replaced, List<Upgraded> upgraded) {

    public WorkDone {
        planned = List.copyOf(planned);
        replaced = List.copyOf(replaced);
        upgraded = List.copyOf(upgraded);
    }

    /** Planned work that took place. @param device name of the one device that it was for, or empty */
    public record PlannedWork(String site, String device, String title, ZoneId zone, Instant from, Instant to) {}

    /** A unit that took another's place. */
    public record Replaced(String site, String device, String oldSerial, String newSerial, ZoneId zone, Instant at) {}

    /** A device that was seen to run another firmware. */
    public record Upgraded(String site, String device, String old, String fresh, ZoneId zone, Instant at) {}
}
