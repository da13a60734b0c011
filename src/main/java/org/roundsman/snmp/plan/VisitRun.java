package org.roundsman.snmp.plan;

import java.lang.System.Logger.Level;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.roundsman.measure.Facts;
import org.roundsman.measure.Outcome;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;
import org.roundsman.snmp.SnmpSettings;
import org.roundsman.snmp.Visit;
import org.roundsman.snmp.VisitKind;
import org.roundsman.snmp.counter.Uptime;
import org.roundsman.snmp.decode.Numbers;
import org.roundsman.snmp.decode.RawAnswers;
import org.roundsman.snmp.profile.Profile;
import org.roundsman.snmp.session.Exchange;
import org.roundsman.snmp.session.Request;
import org.snmp4j.smi.OID;

/** One visit, from its first request to the finished {@link Visit}. Runs on its agent's thread. */
public final class VisitRun {

    private static final System.Logger LOG = System.getLogger(VisitRun.class.getName());

    /**
     * What all visits share.
     *
     * @param names names raw answers of traced visits
     */
    public record Setting(
            Exchange session, SnmpSettings settings, List<Profile> profiles, RawAnswers names, Clock clock) {}

    private final Setting setting;
    private final DeviceRecord record;
    private final VisitKind kind;
    private final CompletableFuture<Visit> future;
    private final Errand errand;

    private Instant at;
    private boolean restarted;

    private VisitRun(Setting setting, DeviceRecord record, VisitKind kind, CompletableFuture<Visit> future) {
        this.setting = setting;
        this.record = record;
        this.kind = kind;
        this.future = future;
        this.errand = new Errand(
                setting.session(), record.peer(), kind == VisitKind.TRACED ? setting.names() : null, this::fault);
    }

    /** Visits; the future completes with the visit. */
    public static void start(Setting setting, DeviceRecord record, VisitKind kind, CompletableFuture<Visit> future) {
        VisitRun run = new VisitRun(setting, record, kind, future);
        setting.session().meet(record.peer(), refusal -> run.guarded(() -> run.begin(refusal)));
    }

    private void guarded(Runnable step) {
        try {
            step.run();
        } catch (RuntimeException e) {
            fault(e);
        }
    }

    /** A fault of ours ends the visit and is logged; it never leaves a caller waiting. */
    private void fault(RuntimeException e) {
        LOG.log(
                Level.ERROR,
                "A fault of ours while visiting " + record.peer().agent().host(),
                e);
        errand.remark("a fault of ours ended the visit: " + e);
        if (errand.outcome() == null) {
            errand.refused(Outcome.UNREADABLE_REPLY);
        }
        record.use(null);
        complete(Values.none(Subject.DEVICE), null);
    }

    private void begin(Outcome refusal) {
        at = setting.clock().instant().truncatedTo(ChronoUnit.MILLIS);
        if (refusal != null) {
            errand.refused(refusal);
            complete(Values.none(Subject.DEVICE), null);
            return;
        }
        if (kind == VisitKind.KNOCK) {
            knock();
            return;
        }
        boolean survey = kind == VisitKind.TRACED
                || record.surveyDue(System.nanoTime())
                || !record.wasMadeFrom(setting.profiles());
        if (survey) {
            greet();
        } else if (kind == VisitKind.PROBE) {
            probe();
        } else {
            round();
        }
    }

    private void knock() {
        ask(List.of(slot(Standard.SYS_UP_TIME)), heard -> {
            Request again = Request.get(List.of(Standard.SYS_UP_TIME));
            PrivacyDoubt.settle(errand, again, this::knockAgain, () -> complete(Values.none(Subject.DEVICE), null));
        });
    }

    private void knockAgain() {
        errand.forgetOutcome();
        knock();
    }

    private void probe() {
        ask(List.of(slot(Standard.SYS_UP_TIME)), heard -> {
            if (heard) {
                round();
            } else {
                complete(Values.none(Subject.DEVICE), null);
            }
        });
    }

    private void round() {
        record.plan.expect();
        Fetch.start(errand, record.limits, record.portions(), complete -> heardRound());
    }

    private void heardRound() {
        if (!errand.isAnswered()) {
            complete(Values.none(Subject.DEVICE), null);
            return;
        }
        if (errand.wasRefusedInPart()) {
            record.cutAgain();
        }
        observe();
        if (restarted) {
            // It may have come back as another device: with other firmware, or in exchange.
            record.book.expectAllBut(record.plan.fast());
            ask(List.of(slot(Standard.SYS_OBJECT_ID)), heard -> survey());
            return;
        }
        if (record.plan.isOutdated()) {
            record.lacks(System.nanoTime());
        }
        finish(false);
    }

    /** The first small Get of a survey: is anybody there, and what is it? */
    private void greet() {
        record.book.expectAllBut(List.of());
        List<Slot> slots = List.of(
                slot(Standard.SYS_UP_TIME),
                slot(Standard.SYS_OBJECT_ID),
                slot(Standard.ENGINE_BOOTS),
                slot(Standard.ENGINE_TIME));
        ask(slots, heard -> {
            if (!errand.isAnswered()) {
                Request again = Request.get(List.of(Standard.SYS_UP_TIME));
                PrivacyDoubt.settle(errand, again, this::greetAgain, () -> complete(Values.none(Subject.DEVICE), null));
                return;
            }
            observe();
            double engineTime = number(Standard.ENGINE_TIME);
            if (engineTime > 0) {
                record.uptime.widen((long) engineTime);
            }
            survey();
        });
    }

    private void greetAgain() {
        errand.forgetOutcome();
        greet();
    }

    private void ask(List<Slot> slots, java.util.function.Consumer<Boolean> then) {
        slots.forEach(Slot::expect);
        Fetch.start(errand, record.limits, Fetch.portions(slots, record.limits), then);
    }

    private Slot slot(OID oid) {
        return record.book.at(oid);
    }

    private double number(OID oid) {
        Slot slot = record.book.find(oid);
        return slot == null || slot.value == null ? Double.NaN : Numbers.of(slot.value);
    }

    private void observe() {
        double ticks = number(Standard.SYS_UP_TIME);
        double boots = number(Standard.ENGINE_BOOTS);
        Uptime.Verdict verdict = record.uptime.sample(
                Double.isNaN(ticks) ? -1 : (long) ticks,
                Double.isNaN(boots) ? -1 : (int) boots,
                errand.receivedNanos());
        restarted = verdict == Uptime.Verdict.RESTARTED;
        if (verdict == Uptime.Verdict.UNSURE) {
            errand.remark("the device's uptime does not fit the time that passed: no rates this time");
        }
        if (restarted) {
            record.limits = new Limits();
        }
    }

    private void survey() {
        Slot objectId = slot(Standard.SYS_OBJECT_ID);
        OID told = objectId.value instanceof OID oid ? oid : null;
        TableWalk.Tour tour = new TableWalk.Tour(
                errand, record.limits, record.book, setting.settings().maxRows());
        Survey.start(tour, setting.profiles(), told, this::heardSurvey);
    }

    private void heardSurvey(Survey.Result found) {
        PollPlan made = new PlanMaking(
                        found, record.book, List.of(slot(Standard.SYS_UP_TIME), slot(Standard.ENGINE_BOOTS)))
                .make();
        record.use(made);
        record.madeFrom(setting.profiles(), found);
        record.book.keepOnly(made.slots());
        record.surveyed(
                found.complete(),
                System.nanoTime(),
                setting.settings().factsEvery().toNanos());
        finish(found.complete());
    }

    private void finish(boolean withFacts) {
        record.plan.track(record.uptime.moment());
        Findings findings = new Findings(record.plan, errand, setting.clock().millis());
        Values device = findings.device(record.uptime.seconds());
        complete(device, new Found(findings, withFacts));
    }

    private record Found(Findings findings, boolean withFacts) {}

    private void complete(Values device, Found found) {
        PollPlan plan = record.plan;
        future.complete(new Visit(
                at,
                errand.outcome(),
                device,
                found == null ? List.of() : found.findings().radios(),
                found == null ? List.of() : found.findings().networks(),
                found != null && found.withFacts() ? Optional.of(plan.asFacts()) : Optional.<Facts>empty(),
                plan == null ? List.of() : plan.profiles(),
                restarted,
                errand.requests(),
                errand.timeouts(),
                errand.raw(),
                errand.remarks()));
    }
}
