package org.roundsman.web.discovery;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.discovery.FoundDevice;
import org.roundsman.discovery.Review;
import org.roundsman.discovery.Standing;
import org.roundsman.discovery.SweepReview;
import org.roundsman.discovery.SweepReview.Unanswered;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Words;

/**
 * What a sweep found, in the order in which it is worked through.
 *
 * @param open what can be adopted
 * @param more what is left out of the list because it is too long, or empty
 * @param look what a person has to look at
 * @param known what is in the fleet already
 */
record ListView(
        List<LineView> open,
        String more,
        List<LineView> look,
        List<LineView> known,
        List<Unanswered> unanswered,
        String fault) {

    /** A form of so many lines can still be sent and read. */
    private static final int MOST = 500;

    static ListView of(SweepReview review, List<Review> entered, Faults faults) {
        Map<Long, Review> entries = new HashMap<>();
        entered.forEach(entry -> entries.put(entry.findingId(), entry));
        List<FoundDevice> open =
                review.found().stream().filter(FoundDevice::isOpen).toList();
        List<LineView> lines = open.stream()
                .limit(MOST)
                .map(line -> LineView.of(line, entries.getOrDefault(line.findingId(), line.entry()), faults))
                .toList();
        List<FoundDevice> closed =
                review.found().stream().filter(line -> !line.isOpen()).toList();
        String more = open.size() <= MOST
                ? ""
                : Words.many(open.size() - MOST, "more line follows", "more lines follow") + " once these are adopted.";
        return new ListView(
                lines,
                more,
                views(closed, true),
                views(closed, false),
                review.unanswered(),
                faults.none()
                        ? ""
                        : faults.at("").isEmpty() ? "Nothing was adopted: look at the marked lines." : faults.at(""));
    }

    private static List<LineView> views(List<FoundDevice> lines, boolean look) {
        return lines.stream()
                .filter(line -> look == needsLook(line))
                .map(line -> LineView.of(line, line.entry(), Faults.NONE))
                .toList();
    }

    private static boolean needsLook(FoundDevice line) {
        Standing standing = line.decision().standing();
        return line.adoptedAt().isEmpty() && (standing == Standing.REFUSED || standing == Standing.DOUBTFUL);
    }

    public boolean isEmpty() {
        return open.isEmpty() && look.isEmpty() && known.isEmpty();
    }
}
