package org.roundsman.web.planned;

import java.time.Instant;
import java.time.ZoneId;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.PlannedWindow.State;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Timing;

/**
 * Planned work in a list.
 *
 * @param state in words
 * @param when its times by the clock of the site
 * @param days for what repeats: from which day to which
 * @param now until when it goes on, or when it comes next; else empty
 * @param by who made it, and who ended it
 * @param zone whose clock the times are by
 */
record WorkLine(
        long id,
        String title,
        String where,
        String customer,
        String state,
        String when,
        String days,
        String now,
        String by,
        String zone,
        boolean running) {

    static WorkLine of(PlannedWindow window, Instant now) {
        ZoneId zone = window.target().zone();
        State state = window.state(now);
        return new WorkLine(
                window.id(),
                window.title(),
                window.target().words(),
                window.target().reach() == Reach.CUSTOMER ? "" : window.target().customer(),
                WorkWords.state(state),
                WorkWords.timing(window.timing(), zone),
                WorkWords.days(window.timing()),
                now(window, now),
                by(window, state, zone),
                several(window) && window.timing() instanceof Timing.Repeating ? "each site’s own clock" : zone.getId(),
                state == State.RUNNING);
    }

    private static boolean several(PlannedWindow window) {
        return window.target().zones().size() > 1;
    }

    private static String now(PlannedWindow window, Instant now) {
        ZoneId zone = window.target().zone();
        return window.running(now)
                .map(one -> "until " + WorkWords.end(one.to(), now, zone) + ", " + WorkWords.left(one.to(), now))
                .or(() -> window.timing() instanceof Timing.Once
                        ? java.util.Optional.empty()
                        : window.next(now).map(one -> "next: " + WorkWords.stretch(one, zone)))
                .orElse("");
    }

    private static String by(PlannedWindow window, State state, ZoneId zone) {
        StringBuilder text = new StringBuilder(window.madeBy());
        PlannedWindow.Course course = window.course();
        if (state == State.CANCELLED || state == State.REPLACED) {
            text.append("; ").append(WorkWords.state(state)).append(" by ").append(course.stoppedBy());
        } else if (window.timing() instanceof Timing.Once && !course.ends().isEmpty()) {
            PlannedWindow.Ended end = course.ends().get(0);
            text.append("; ended at ")
                    .append(WorkWords.clock(end.at(), zone))
                    .append(" by ")
                    .append(end.by());
        }
        return text.toString();
    }
}
