package org.roundsman.planned;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Planned work as it is kept.
 *
 * @param madeBy sign-in name
 * @param course what became of it
 */
public record PlannedWindow(
        long id,
        Target target,
        String title,
        String reason,
        Timing timing,
        String madeBy,
        Instant madeAt,
        Course course) {

    /** How it stands at a moment. */
    public enum State {
        /** Work is going on. */
        RUNNING,
        /** It happens once, and later. */
        COMING,
        /** It repeats, and happens again later. */
        REPEATING,
        /** Nothing more of it comes. */
        OVER,
        /** A person called it off; what had been by then stays. */
        CANCELLED,
        /** A person changed its times; what had been by then stays, the rest is in another window. */
        REPLACED
    }

    /** Why nothing counts any more. */
    public enum Stop {
        CANCELLED,
        REPLACED
    }

    /** Somebody said that the work was done before its time. */
    public record Ended(Instant at, String by) {}

    /**
     * What became of a window after it was made.
     *
     * @param countsFrom nothing before counts, so that a repetition entered today does not reach into the past
     * @param countsUntil nothing after counts
     * @param stop why, empty while it may go on
     * @param stoppedBy sign-in name, or empty
     * @param replaces id of the window whose place it took
     * @param ends each ends what was going on at its moment
     */
    public record Course(
            Optional<Instant> countsFrom,
            Optional<Instant> countsUntil,
            Optional<Stop> stop,
            String stoppedBy,
            Optional<Long> replaces,
            List<Ended> ends) {

        public Course {
            ends = List.copyOf(ends);
        }

        /** Of one that was made just now. */
        static Course fresh(Optional<Instant> countsFrom, Optional<Long> replaces) {
            return new Course(countsFrom, Optional.empty(), Optional.empty(), "", replaces, List.of());
        }

        /** What of that stretch counts; empty when nothing does. */
        Optional<Stretch> left(Stretch whole) {
            Instant to = ends.stream()
                    .map(Ended::at)
                    .filter(whole::covers)
                    .min(Comparator.naturalOrder())
                    .orElse(whole.to());
            return Stretch.of(whole.from(), to)
                    .flatMap(s -> s.within(countsFrom.orElse(s.from()), countsUntil.orElse(s.to())));
        }
    }

    /** What of it counts, for a site in that time zone, and shares time with what lies between; ascending, not cut to it. */
    public List<Stretch> stretches(ZoneId zone, Instant from, Instant to) {
        return timing.between(from, to, zone).stream()
                .flatMap(one -> course.left(one).stream())
                .filter(one -> one.within(from, to).isPresent())
                .toList();
    }

    /** What is going on in that time zone at that moment; of several that overlap, the one that lasts longest. */
    public Optional<Stretch> running(ZoneId zone, Instant at) {
        return stretches(zone, at, at.plusNanos(1)).stream()
                .filter(one -> one.covers(at))
                .max(Comparator.comparing(Stretch::to));
    }

    /** The same wherever its sites are. */
    public Optional<Stretch> running(Instant at) {
        return everywhere(zone -> running(zone, at).stream()).max(Comparator.comparing(Stretch::to));
    }

    /** The next that begins after that moment in that time zone; empty where none comes. */
    public Optional<Stretch> next(ZoneId zone, Instant at) {
        return timing.after(at, zone, 1).stream()
                .flatMap(one -> course.left(one).stream())
                .findFirst();
    }

    /** The same wherever its sites are. */
    public Optional<Stretch> next(Instant at) {
        return everywhere(zone -> next(zone, at).stream()).min(Comparator.comparing(Stretch::from));
    }

    private Stream<Stretch> everywhere(java.util.function.Function<ZoneId, Stream<Stretch>> where) {
        return target.zones().stream().flatMap(where);
    }

    /** When nothing of it comes any more; empty where it goes on for ever. */
    public Optional<Instant> over() {
        Stream<Instant> last = timing.endless() ? Stream.empty() : Stream.of(lastEnd());
        return Stream.concat(course.countsUntil().stream(), last).min(Comparator.naturalOrder());
    }

    /** When the last of all is over, which may be when it was ended early. */
    private Instant lastEnd() {
        return everywhere(zone -> timing.last(zone).stream())
                .map(one -> course.left(one).map(Stretch::to).orElse(one.from()))
                .max(Comparator.naturalOrder())
                .orElse(madeAt);
    }

    public State state(Instant now) {
        if (course.stop().isPresent()) {
            return course.stop().get() == Stop.CANCELLED ? State.CANCELLED : State.REPLACED;
        }
        if (running(now).isPresent()) {
            return State.RUNNING;
        }
        if (next(now).isEmpty()) {
            return State.OVER;
        }
        return timing instanceof Timing.Once ? State.COMING : State.REPEATING;
    }

    /** The same window with other words and times. */
    PlannedWindow with(PlanDraft draft) {
        return new PlannedWindow(
                id, target, draft.title().strip(), draft.reason().strip(), draft.timing(), madeBy, madeAt, course);
    }

    PlannedWindow with(Course other) {
        return new PlannedWindow(id, target, title, reason, timing, madeBy, madeAt, other);
    }
}
