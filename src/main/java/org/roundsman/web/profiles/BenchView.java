package org.roundsman.web.profiles;

import java.util.List;
import java.util.Map;
import org.roundsman.fleet.Customer;
import org.roundsman.profiles.StoredWalk;
import org.roundsman.profiles.WalkFetches;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Words;

/**
 * The workbench's first page.
 *
 * @param devices that the search found
 * @param faulty lines of a pasted walk that could not be read
 */
record BenchView(
        String search,
        List<Found> devices,
        List<Kept> walks,
        List<Customer> customers,
        List<Reading> readings,
        Map<String, String> entered,
        List<String> faulty,
        Faults wrong,
        boolean writes) {

    /** A device that can be read. */
    record Found(long id, String name, String place) {}

    /** A walk that is kept. */
    record Kept(long id, String name, String whose, String size, String taken, boolean testCase) {
        static Kept of(StoredWalk walk) {
            return new Kept(
                    walk.id(),
                    walk.name(),
                    walk.customer().isEmpty() ? "nobody's in particular" : walk.customer(),
                    Words.many(walk.variables(), "variable", "variables"),
                    Times.of(walk.takenAt()),
                    walk.testCase());
        }
    }

    /** A device that is being read, or was. */
    record Reading(long id, String device, String state, boolean running, long walk) {
        static Reading of(WalkFetches.Progress p) {
            String so = Words.many(p.variables(), "variable", "variables");
            String state =
                    switch (p.state()) {
                        case RUNNING -> "reading: " + so + " so far";
                        case KEPT -> "done: " + so;
                        case FAILED -> "failed: " + p.message();
                    };
            return new Reading(
                    p.id(),
                    p.wish().deviceName(),
                    state,
                    p.state() == WalkFetches.State.RUNNING,
                    p.walkId().orElse(0L));
        }
    }

    public boolean running() {
        return readings.stream().anyMatch(Reading::running);
    }

    public String at(String field) {
        return entered.getOrDefault(field, "");
    }
}
