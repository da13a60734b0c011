package org.roundsman.web.planned;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.planned.Occurrence;
import org.roundsman.planned.PlanDraft;
import org.roundsman.planned.PlannedWindow;
import org.roundsman.planned.Planning;
import org.roundsman.planned.Stretch;
import org.roundsman.planned.Target;
import org.roundsman.planned.Timing;
import org.roundsman.web.page.Faults;

/** Makes what the form of planned work shows. */
@ApplicationScoped
class PlanView {

    private static final int PREVIEW = 5;

    /** Fields of a repetition, in the order of the form. */
    private static final List<String> TIMES = List.of(
            "repeats", "weekdays", "day", "which", "weekday", "start", "length", "firstDay", "lastDay", "skipped");

    private final Planning planning;
    private final Choices choices;
    private final Clock clock;

    PlanView(Planning planning, Choices choices, Clock clock) {
        this.planning = planning;
        this.choices = choices;
        this.clock = clock;
    }

    /**
     * The next times of what is entered.
     *
     * @param zone by whose clock
     * @param several whether its sites are in several time zones
     * @param trouble why there is nothing to show, or empty
     */
    record Preview(List<ComingLine> next, String zone, boolean several, String trouble) {}

    /**
     * The form.
     *
     * @param place what is worked on, where it cannot be chosen any more; else empty
     */
    record Shown(
            String heading,
            String action,
            String back,
            String place,
            PlanForm form,
            List<Choices.Group> groups,
            Preview preview,
            Faults faults) {

        /** Weekdays to tick. */
        public List<Pick> weekdays() {
            return Pick.weekdays(form::ticked);
        }

        /** Weekdays of which one is chosen. */
        public List<Pick> monthWeekdays() {
            return Pick.weekdays(day -> String.valueOf(day).equals(form.dayOfWeek()));
        }

        /** Days of a month. */
        public List<Pick> days() {
            return Pick.days(form.day());
        }

        /** First to fourth, and last. */
        public List<Pick> places() {
            return Pick.places(form.which());
        }
    }

    Shown blank(CustomerScope scope, String of) {
        Optional<PlanDraft.Where> where = PlanForm.where(of);
        ZoneId zone = where.map(place -> require(scope, place).zone()).orElse(ZoneOffset.UTC);
        PlanForm form = PlanForm.blank(of, zone, clock.instant());
        return shown(scope, form, 0, "", Faults.NONE);
    }

    Shown of(CustomerScope scope, PlannedWindow window) {
        PlanForm form = PlanForm.of(window, clock.instant());
        return shown(scope, form, window.id(), window.target().words(), Faults.NONE);
    }

    /** What was entered, with what is wrong in it. */
    Shown again(CustomerScope scope, PlanForm form, long id, Faults faults) {
        String place = id == 0
                ? ""
                : planning.find(scope, id)
                        .map(window -> window.target().words())
                        .orElse("");
        return shown(scope, form, id, place, faults);
    }

    private Shown shown(CustomerScope scope, PlanForm form, long id, String place, Faults faults) {
        Optional<PlanDraft.Where> where = PlanForm.where(form.of());
        return new Shown(
                id == 0 ? "Plan work" : "Change planned work",
                id == 0 ? "/planned" : "/planned/" + id,
                id == 0 ? "/planned" : "/planned/" + id,
                place,
                form,
                id == 0 ? choices.around(scope, where) : List.of(),
                preview(scope, form),
                faults);
    }

    private Target require(CustomerScope scope, PlanDraft.Where where) {
        try {
            return planning.target(scope, where);
        } catch (InputRejected e) {
            throw new jakarta.ws.rs.NotFoundException(e);
        }
    }

    /**
     * What was entered.
     *
     * @throws InputRejected naming what cannot be read
     */
    PlanDraft draft(CustomerScope scope, PlanForm form) {
        PlanDraft.Where where = PlanForm.where(form.of())
                .orElseThrow(() -> new InputRejected(Map.of("of", "choose what is worked on")));
        return draft(form, where, target(scope, where));
    }

    /**
     * What was entered for a window that is there; what is worked on stays.
     *
     * @throws InputRejected naming what cannot be read
     */
    PlanDraft draft(PlannedWindow window, PlanForm form) {
        Target target = window.target();
        long id =
                switch (target.reach()) {
                    case CUSTOMER -> target.customerId();
                    case SITE -> target.siteId().orElse(0);
                    case DEVICE -> target.deviceId().orElse(0);
                };
        return exact(window, form, draft(form, new PlanDraft.Where(target.reach(), id), target));
    }

    /** A moment that was not touched stays exact: the form knows neither seconds nor which of two equal hours it is in. */
    private static PlanDraft exact(PlannedWindow window, PlanForm form, PlanDraft draft) {
        if (!(window.timing() instanceof Timing.Once old) || !(draft.timing() instanceof Timing.Once fresh)) {
            return draft;
        }
        Stretch kept = old.when();
        ZoneId zone = window.target().zone();
        Instant from = WorkWords.field(kept.from(), zone).equals(form.from())
                ? kept.from()
                : fresh.when().from();
        Instant to = WorkWords.field(kept.to(), zone).equals(form.to())
                ? kept.to()
                : fresh.when().to();
        return Stretch.of(from, to)
                .map(when -> new PlanDraft(draft.where(), draft.title(), draft.reason(), new Timing.Once(when)))
                .orElse(draft);
    }

    private Target target(CustomerScope scope, PlanDraft.Where where) {
        try {
            return planning.target(scope, where);
        } catch (InputRejected e) {
            throw new InputRejected(Map.of("of", "this is not there any more"));
        }
    }

    private PlanDraft draft(PlanForm form, PlanDraft.Where where, Target target) {
        Entered entered = new Entered();
        PlanDraft draft = form.draft(where, target.zone(), entered);
        Map<String, String> faults = new LinkedHashMap<>(entered.faults());
        if (!faults.isEmpty()) {
            planning.faults(target, draft).forEach((field, fault) -> {
                if (!field.equals("timing")) {
                    faults.putIfAbsent(field, fault);
                }
            });
            throw new InputRejected(faults);
        }
        return draft;
    }

    Preview preview(CustomerScope scope, PlanForm form) {
        try {
            PlanDraft draft = draft(scope, form);
            Target target = planning.target(scope, draft.where());
            Map<String, String> faults = planning.faults(target, draft);
            Optional<String> wrong = TIMES.stream().filter(faults::containsKey).findFirst();
            if (draft.timing() instanceof Timing.Repeating && wrong.isPresent()) {
                return new Preview(List.of(), "", false, "The times do not fit yet: " + faults.get(wrong.get()) + ".");
            }
            boolean several = target.zones().size() > 1;
            Instant now = clock.instant();
            Instant from = draft.timing() instanceof Timing.Once once
                    ? once.when().from().minusNanos(1)
                    : now;
            List<Occurrence> next = Occurrence.next(draft.timing(), from, target.zone(), PREVIEW);
            String trouble = next.isEmpty() ? "With these days nothing is left to come." : "";
            return new Preview(ComingLine.of(next), target.zone().getId(), several, trouble);
        } catch (InputRejected e) {
            return new Preview(List.of(), "", false, trouble(e));
        }
    }

    private static String trouble(InputRejected e) {
        return e.faults().containsKey("of")
                ? "Choose what is worked on: times are by the clock there."
                : "Something in the times cannot be read yet.";
    }
}
