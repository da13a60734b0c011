package org.roundsman.planned;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.planned.PlannedWindow.Course;
import org.roundsman.planned.PlannedWindow.Ended;
import org.roundsman.planned.PlannedWindow.State;
import org.roundsman.planned.PlannedWindow.Stop;
import org.roundsman.planned.store.WindowTable;

/**
 * Makes planned work, changes it, ends it early and calls it off. What has been stays: a change never alters which time
 * counted before it, except that work which was done lately may be entered afterwards, once. Every method throws {@link
 * InputRejected} with a fault of {@code id} when the window is not there or lies outside of the scope.
 */
@ApplicationScoped
@Transactional
public class Planning {

    /** Two taps on one button are one. */
    private static final Duration SECOND_TAP = Duration.ofSeconds(15);

    private final WindowTable table;
    private final Targets targets;
    private final AuditTrail audit;
    private final Clock clock;
    private final Event<PlannedWorkChanged> changed;

    @Inject
    Planning(DataSource database, Targets targets, AuditTrail audit, Clock clock, Event<PlannedWorkChanged> changed) {
        this.table = new WindowTable(database);
        this.targets = targets;
        this.audit = audit;
        this.clock = clock;
        this.changed = changed;
    }

    /** Empty when there is none or it lies outside the scope. */
    public Optional<PlannedWindow> find(CustomerScope scope, long id) {
        return table.find(id).filter(one -> scope.includes(one.target().customerId()));
    }

    /**
     * What would be worked on.
     *
     * @throws InputRejected naming the customer, site or device when it is not there or lies outside the scope
     */
    public Target target(CustomerScope scope, PlanDraft.Where where) {
        return targets.find(scope, where);
    }

    /** What is wrong with an entry, by field; empty when nothing is. Nothing is kept. */
    public Map<String, String> faults(Target target, PlanDraft draft) {
        return PlanCheck.faults(draft, target.zones(), clock.instant(), Optional.empty());
    }

    /**
     * @throws InputRejected naming each field that cannot be taken
     */
    public PlannedWindow add(CustomerScope scope, PlanDraft draft) {
        Target target = targets.find(scope, draft.where());
        refuse(PlanCheck.faults(draft, target.zones(), clock.instant(), Optional.empty()));
        return store(target, draft, Optional.empty());
    }

    /**
     * Starts work at this moment. Tapped twice, it starts once.
     *
     * @throws InputRejected naming each field that cannot be taken
     */
    public PlannedWindow start(CustomerScope scope, PlanDraft.Where where, Duration length, String title) {
        Target target = targets.find(scope, where);
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        Map<String, String> fault = length.compareTo(PlanCheck.SHORTEST) < 0
                ? Map.of("to", "at least 5 minutes after the beginning")
                : Map.of();
        refuse(fault);
        PlanDraft draft = new PlanDraft(where, title, "", new Timing.Once(new Stretch(now, now.plus(length))));
        refuse(PlanCheck.faults(draft, target.zones(), now, Optional.empty()));
        return table.open(target.customerId(), null, now).stream()
                .filter(one -> tappedBefore(one, target, draft, now))
                .findFirst()
                .orElseGet(() -> store(target, draft, Optional.empty()));
    }

    private boolean tappedBefore(PlannedWindow one, Target target, PlanDraft draft, Instant now) {
        return one.madeBy().equals(audit.actor().name())
                && one.madeAt().plus(SECOND_TAP).isAfter(now)
                && one.target().equals(target)
                && one.title().equals(draft.title().strip())
                && one.timing() instanceof Timing.Once
                && one.timing().length().equals(draft.timing().length())
                && one.state(now) == State.RUNNING;
    }

    private PlannedWindow store(Target target, PlanDraft draft, Optional<Long> replaces) {
        Instant now = moment();
        boolean repeats = draft.timing() instanceof Timing.Repeating;
        Optional<Instant> counts = repeats || replaces.isPresent() ? Optional.of(now) : Optional.empty();
        PlannedWindow fresh = new PlannedWindow(
                0,
                target,
                draft.title().strip(),
                draft.reason().strip(),
                draft.timing(),
                audit.actor().name(),
                now,
                Course.fresh(counts, replaces));
        PlannedWindow stored = table.find(table.add(fresh)).orElseThrow();
        audit.added(subject(stored), fields(stored));
        changed.fire(new PlannedWorkChanged());
        return stored;
    }

    /**
     * Gives a window other words and times. Where the new times alter nothing of what has been, the window itself is
     * changed. Else a repetition stops here and goes on as another window, so that the past stays as it was.
     *
     * @return the window, or the one that took its place
     * @throws InputRejected naming each field that cannot be taken; what is worked on cannot be changed
     */
    public PlannedWindow change(CustomerScope scope, long id, PlanDraft draft) {
        PlannedWindow before = hold(scope, id);
        Instant now = moment();
        requireOpen(before, now);
        PlanDraft entered = keepBeginning(before, draft);
        Optional<Instant> begun = before.timing() instanceof Timing.Once once
                ? Optional.of(once.when().from())
                : Optional.empty();
        refuse(PlanCheck.faults(entered, before.target().zones(), now, begun));
        PlannedWindow after = before.with(entered);
        if (past(after, now).equals(past(before, now))) {
            table.change(after);
            audit.changed(subject(after), fields(before), fields(after));
            changed.fire(new PlannedWorkChanged());
            return after;
        }
        if (before.timing() instanceof Timing.Once) {
            throw new InputRejected(
                    Map.of("from", "it has begun: its beginning stays, and it cannot have ended already"));
        }
        stop(before, Stop.REPLACED, now);
        return store(before.target(), entered, Optional.of(id));
    }

    /** Forms know minutes: a beginning of the same minute is the same. */
    private static PlanDraft keepBeginning(PlannedWindow before, PlanDraft draft) {
        if (before.timing() instanceof Timing.Once old && draft.timing() instanceof Timing.Once fresh) {
            Instant from = old.when().from();
            Instant entered = fresh.when().from();
            boolean same = from.truncatedTo(ChronoUnit.MINUTES).equals(entered.truncatedTo(ChronoUnit.MINUTES));
            if (same && from.isBefore(fresh.when().to())) {
                Timing kept = new Timing.Once(new Stretch(from, fresh.when().to()));
                return new PlanDraft(draft.where(), draft.title(), draft.reason(), kept);
            }
        }
        return draft;
    }

    /** What of it has counted by now, for each of its time zones. */
    private static Map<ZoneId, List<Stretch>> past(PlannedWindow window, Instant now) {
        Instant from = window.timing() instanceof Timing.Once once
                ? once.when().from()
                : window.course().countsFrom().orElse(window.madeAt());
        Map<ZoneId, List<Stretch>> past = new LinkedHashMap<>();
        if (from.isBefore(now)) {
            window.target()
                    .zones()
                    .forEach(zone -> past.put(
                            zone,
                            Stretch.merged(window.stretches(zone, from, now).stream()
                                    .flatMap(one -> one.within(from, now).stream())
                                    .toList())));
        } else {
            window.target().zones().forEach(zone -> past.put(zone, List.of()));
        }
        return past;
    }

    /**
     * Ends what is going on at this moment; a repetition comes again another time.
     *
     * @throws InputRejected with a fault of the whole when nothing is going on
     */
    public PlannedWindow end(CustomerScope scope, long id) {
        PlannedWindow before = hold(scope, id);
        Instant now = moment();
        if (before.running(now).isEmpty()) {
            throw new InputRejected(Map.of("", "this work is not going on"));
        }
        Ended ended = new Ended(now, audit.actor().name());
        Course course = before.course();
        List<Ended> ends = new java.util.ArrayList<>(course.ends());
        ends.add(ended);
        PlannedWindow after = before.with(new Course(
                course.countsFrom(), course.countsUntil(), course.stop(), course.stoppedBy(), course.replaces(), ends));
        table.end(after, ended);
        audit.did("ended", subject(after));
        changed.fire(new PlannedWorkChanged());
        return after;
    }

    /**
     * Calls off all that is still to come, what is going on included; what has been stays.
     *
     * @throws InputRejected with a fault of the whole when nothing is to come
     */
    public PlannedWindow cancel(CustomerScope scope, long id) {
        PlannedWindow before = hold(scope, id);
        Instant now = moment();
        requireOpen(before, now);
        PlannedWindow after = stop(before, Stop.CANCELLED, now);
        audit.did("cancelled", subject(after));
        changed.fire(new PlannedWorkChanged());
        return after;
    }

    private PlannedWindow stop(PlannedWindow window, Stop why, Instant now) {
        Course course = window.course();
        PlannedWindow after = window.with(new Course(
                course.countsFrom(),
                Optional.of(now),
                Optional.of(why),
                audit.actor().name(),
                course.replaces(),
                course.ends()));
        table.stop(after);
        if (why == Stop.REPLACED) {
            audit.did("replaced", subject(after));
        }
        return after;
    }

    private static void requireOpen(PlannedWindow window, Instant now) {
        State state = window.state(now);
        if (state == State.OVER || state == State.CANCELLED || state == State.REPLACED) {
            throw new InputRejected(Map.of("", "this work is over; what has been stays as it was"));
        }
    }

    private PlannedWindow hold(CustomerScope scope, long id) {
        return table.hold(id)
                .filter(one -> scope.includes(one.target().customerId()))
                .orElseThrow(() -> new InputRejected(Map.of("id", "this planned work is not there")));
    }

    private static void refuse(Map<String, String> faults) {
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
    }

    /** As exact as the database keeps it. */
    private Instant moment() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    private static Subject subject(PlannedWindow window) {
        return new Subject(
                "planned work", window.id(), window.title(), window.target().customerId());
    }

    private static FieldSet fields(PlannedWindow window) {
        return new FieldSet()
                .with("of", window.target().words())
                .with("title", window.title())
                .with("reason", window.reason())
                .with("when", TimingWords.of(window.timing()));
    }
}
