package org.roundsman.firmware;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Devices of one site and line whose firmware should be changed.
 *
 * @param reason of the worst of them
 * @param targets what they are to run: one entry, or one for each model where not all are to run the same
 * @param devices those to change
 * @param of how many devices of that line the site has
 * @param daysBehind the most of any of them; empty where not known
 * @param people clients at the site in the busiest quarter hour of the last week; empty where not known
 * @param fits the windows of planned work that they fit into, in order
 * @param left how many of them fit into no window that is planned
 */
public record WorkItem(
        FirmwarePlace place,
        Risk risk,
        String reason,
        List<Target> targets,
        List<FirmwareState> devices,
        int of,
        OptionalLong daysBehind,
        OptionalInt people,
        List<Fit> fits,
        int left) {

    /** Why it should be done, the most urgent first. */
    public enum Risk {
        SECURITY("security fix missing"),
        WITHDRAWN("withdrawn"),
        MIXED("mixed"),
        BEHIND("behind");

        private final String word;

        Risk(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * What is to run.
     *
     * @param model maker and name of the model that it is for; empty for all of them
     * @param version empty where no release that may run is recommended
     */
    public record Target(String model, String version) {}

    /**
     * A window of planned work that takes some of them.
     *
     * @param devices how many
     */
    public record Fit(long windowId, String title, Instant from, Instant to, int devices) {}

    public WorkItem {
        targets = List.copyOf(targets);
        devices = List.copyOf(devices);
        fits = List.copyOf(fits);
    }

    /** Whether no window at all is planned for it. */
    public boolean unplanned() {
        return fits.isEmpty();
    }

    /** The same, fitted into windows. */
    public WorkItem fitted(List<Fit> windows, int rest) {
        return new WorkItem(place, risk, reason, targets, devices, of, daysBehind, people, windows, rest);
    }
}
