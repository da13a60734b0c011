package org.roundsman.web.firmware;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.WorkItem;
import org.roundsman.web.page.Words;

/**
 * Work on one site as the list shows it.
 *
 * @param runs how many run what, in words
 * @param targets what is to run, for each model where that differs
 * @param windows when it can be done
 * @param left how many find no place in a window, or empty
 * @param devices where to see them
 */
record WorkLine(
        long siteId,
        String site,
        String customer,
        String line,
        String risk,
        String reason,
        String count,
        String runs,
        List<To> targets,
        String behind,
        String people,
        List<Window> windows,
        String left,
        String devices) {

    /** A window of planned work with how many it takes. */
    record Window(long id, String words) {}

    /**
     * What is to run.
     *
     * @param words the version, or that there is none
     * @param model for which model; empty for all
     */
    record To(String words, String model, boolean known) {

        static To of(WorkItem.Target target) {
            return new To(
                    FirmwareWords.or(target.version(), "no release that may run is recommended"),
                    target.model(),
                    !target.version().isEmpty());
        }
    }

    static WorkLine of(WorkItem item) {
        return new WorkLine(
                item.place().siteId(),
                item.place().site(),
                item.place().customer(),
                item.place().line(),
                item.risk().word(),
                item.reason(),
                item.devices().size() + " of " + item.of(),
                runs(item),
                item.targets().stream().map(To::of).toList(),
                FirmwareWords.days(item.daysBehind()),
                item.people().isEmpty() ? "" : "up to " + Words.count(item.people()),
                item.fits().stream().map(fit -> window(item, fit)).toList(),
                left(item),
                "/firmware/devices?site=" + item.place().siteId());
    }

    private static Window window(WorkItem item, WorkItem.Fit fit) {
        String when = Words.moment(fit.from(), item.place().zone()) + " to "
                + Words.clock(fit.to(), item.place().zone());
        return new Window(fit.windowId(), when + ": " + fit.devices() + " (" + fit.title() + ")");
    }

    private static String left(WorkItem item) {
        if (item.unplanned()) {
            return "no window planned";
        }
        return item.left() == 0 ? "" : "no window planned for " + item.left() + " more";
    }

    /** What is to run, in words. */
    static String targets(WorkItem item) {
        return item.targets().stream()
                .map(To::of)
                .map(to -> (to.model().isEmpty() ? "" : to.model() + ": ") + to.words())
                .collect(Collectors.joining("; "));
    }

    static String runs(WorkItem item) {
        Map<String, Long> counts = item.devices().stream()
                .collect(Collectors.groupingBy(FirmwareState::version, TreeMap::new, Collectors.counting()));
        return counts.entrySet().stream()
                .map(one -> one.getValue() + " × " + one.getKey())
                .collect(Collectors.joining(", "));
    }
}
