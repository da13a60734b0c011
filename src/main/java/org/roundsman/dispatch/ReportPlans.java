package org.roundsman.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;
import org.roundsman.dispatch.store.PlanTable;
import org.roundsman.dispatch.work.Parts;
import org.roundsman.dispatch.work.Plans;
import org.roundsman.fleet.InputCheck;
import org.roundsman.fleet.InputRejected;
import org.roundsman.mail.MailAddress;

/** When and how customers' reports are made. Blocks on the database. */
@ApplicationScoped
public class ReportPlans {

    private static final int MOST_RECIPIENTS = 20;
    private static final int LAST_DAY = 28;
    private static final int LAST_HOUR = 23;
    private static final int LEAST_MONTHS = 6;
    private static final int MOST_MONTHS = 120;

    private final Parts parts;

    @Inject
    ReportPlans(Parts parts) {
        this.parts = parts;
    }

    /** That customer's; where none is kept, one that does nothing by itself. */
    public ReportPlan of(long customerId) {
        PlanTable table = new PlanTable(parts.store().rows());
        return table.find(customerId).orElseGet(() -> untouched(table, customerId));
    }

    private ReportPlan untouched(PlanTable table, long customerId) {
        ZoneId zone = table.zones(customerId).stream().findFirst().orElse(ZoneOffset.UTC);
        return Plans.untouched(customerId, zone, parts.making().languages().get(0));
    }

    /** Of every customer with a site, by name. */
    public List<ReportPlan> all() {
        Map<Long, ReportPlan> plans = byCustomer();
        return new PlanTable(parts.store().rows())
                .sited().stream().map(one -> plans.get(one.customerId())).toList();
    }

    /** The same by customer. */
    Map<Long, ReportPlan> byCustomer() {
        PlanTable table = new PlanTable(parts.store().rows());
        Locale language = parts.making().languages().get(0);
        Map<Long, ReportPlan> plans = new LinkedHashMap<>();
        table.sited()
                .forEach(one -> plans.put(
                        one.customerId(), Plans.untouched(one.customerId(), ZoneId.of(one.zone()), language)));
        table.all().forEach(plan -> plans.replace(plan.customerId(), plan));
        return plans;
    }

    /**
     * Keeps a plan. One that starts to build by itself begins with the month whose day comes next.
     *
     * @throws InputRejected naming each field that cannot be taken; {@code customer} when the customer is not there
     */
    public ReportPlan save(long customerId, PlanDraft draft) {
        ReportPlan plan = checked(customerId, draft);
        Instant now = parts.now();
        return parts.store().whole((rows, connection) -> {
            PlanTable table = new PlanTable(rows);
            String customer = table.customer(customerId)
                    .orElseThrow(() -> new InputRejected(Map.of("customer", "this customer is not there any more")));
            ReportPlan before = table.find(customerId).orElseGet(() -> untouched(table, customerId));
            Optional<YearMonth> next = plan.active()
                    ? Optional.of(table.next(customerId).orElseGet(() -> Plans.next(plan, now)))
                    : Optional.empty();
            table.save(plan, next, now);
            List<FieldChange> changes = FieldSet.between(fields(before), fields(plan));
            if (!changes.isEmpty()) {
                Subject subject = new Subject("plan of reports", customerId, customer, customerId);
                parts.audit().note(connection, List.of(new Note("changed", subject, changes)));
            }
            return plan;
        });
    }

    private ReportPlan checked(long customerId, PlanDraft draft) {
        InputCheck check = new InputCheck();
        check.range("day", draft.day(), 1, LAST_DAY);
        check.range("hour", draft.hour(), 0, LAST_HOUR);
        check.range("keepMonths", draft.keepMonths(), LEAST_MONTHS, MOST_MONTHS);
        check.that("paper", draft.paper() != null, "choose one of the papers");
        Optional<ZoneId> zone = zone(draft.zone());
        check.that("zone", zone.isPresent(), "no time zone of this name is known, such as Europe/Berlin");
        Optional<Locale> language = parts.making().languages().stream()
                .filter(one -> one.toLanguageTag().equals(draft.language()))
                .findFirst();
        check.that("language", language.isPresent(), "choose one of the languages");
        List<String> recipients = addresses(draft.recipients());
        check.that("recipients", recipients.size() <= MOST_RECIPIENTS, "at most " + MOST_RECIPIENTS);
        for (String one : recipients) {
            check.that("recipients", MailAddress.valid(one), one + " is no mail address");
        }
        check.done();
        return new ReportPlan(
                customerId,
                draft.active(),
                draft.day(),
                draft.hour(),
                zone.orElseThrow(),
                language.orElseThrow(),
                draft.paper(),
                recipients,
                draft.approval(),
                draft.costs(),
                draft.keepMonths());
    }

    /** Each address once, whatever its case. */
    static List<String> addresses(List<String> entered) {
        Map<String, String> once = new LinkedHashMap<>();
        for (String one : entered) {
            String address = one.strip();
            if (!address.isEmpty()) {
                once.putIfAbsent(address.toLowerCase(Locale.ROOT), address);
            }
        }
        return List.copyOf(once.values());
    }

    private static Optional<ZoneId> zone(String name) {
        try {
            return Optional.of(ZoneId.of(name == null ? "" : name.strip()))
                    .filter(zone -> ZoneId.getAvailableZoneIds().contains(zone.getId()));
        } catch (DateTimeException e) {
            return Optional.empty(); // not a name at all: said as the fault of the field
        }
    }

    private static FieldSet fields(ReportPlan plan) {
        return new FieldSet()
                .with("builds by itself", plan.active() ? "yes" : "no")
                .with("day", plan.day())
                .with("hour", plan.hour())
                .with("time zone", plan.zone())
                .with("language", plan.language().toLanguageTag())
                .with("paper", plan.paper())
                .with("recipients", String.join(", ", plan.recipients()))
                .with("approval", plan.approval() ? "needed" : "not needed")
                .with("costs", plan.costs() ? "shown" : "not shown")
                .with("months kept", plan.keepMonths());
    }
}
