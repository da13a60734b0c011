package org.roundsman.dispatch.work;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.function.BooleanSupplier;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.dispatch.DeskRejected;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.ReportState;
import org.roundsman.dispatch.store.MailTable;
import org.roundsman.dispatch.store.QueueTable;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.mail.MailAddress;
import org.roundsman.reports.ReportLook.PaperSize;
import org.roundsman.system.StorableText;

/** What people do with a report that is built: remark, look, approval, sending. */
public final class Reviewing {

    private static final int LONGEST_REMARK = 4000;
    private static final int MOST_RECIPIENTS = 20;

    private final Parts parts;
    private final LongFunction<ReportPlan> plans;
    private final BooleanSupplier mailOpen;

    public Reviewing(Parts parts, LongFunction<ReportPlan> plans, BooleanSupplier mailOpen) {
        this.parts = parts;
        this.plans = plans;
        this.mailOpen = mailOpen;
    }

    /** See {@link org.roundsman.dispatch.MonthDesk#remark}. */
    public void remark(long id, String text) {
        String remark =
                StorableText.of(text == null ? "" : text).replace("\r\n", "\n").strip();
        if (remark.length() > LONGEST_REMARK) {
            throw new DeskRejected("A remark has at most " + LONGEST_REMARK + " characters.");
        }
        KeptReport report = find(id);
        if (!remark.equals(report.remark())) {
            List<FieldChange> changes = List.of(new FieldChange("remark", report.remark(), remark));
            move(report, "remarked on", changes, "it is found good or sent already", q -> q.remark(id, remark));
        }
    }

    /** See {@link org.roundsman.dispatch.MonthDesk#look}. */
    public void look(long id, Locale language, PaperSize paper, boolean costs) {
        if (!parts.making().languages().contains(language)) {
            throw new DeskRejected("Reports cannot be written in this language.");
        }
        KeptReport report = find(id);
        FieldChange change = new FieldChange(
                "look", look(report.language(), report.paper(), report.costs()), look(language, paper, costs));
        if (!change.old().equals(change.fresh())) {
            move(
                    report,
                    "changed the look of",
                    List.of(change),
                    "it is found good or sent already",
                    q -> q.look(id, language.toLanguageTag(), paper.name(), costs));
        }
    }

    private static String look(Locale language, PaperSize paper, boolean costs) {
        return language.toLanguageTag() + ", " + paper + (costs ? ", with costs" : ", without costs");
    }

    /** See {@link org.roundsman.dispatch.MonthDesk#approve}. */
    public void approve(long id) {
        Instant now = parts.now();
        String by = parts.audit().actor().name();
        move(find(id), "found good", List.of(), "it does not wait to be reviewed", q -> q.approve(id, by, now));
    }

    /** See {@link org.roundsman.dispatch.MonthDesk#reopen}. */
    public void reopen(long id) {
        move(find(id), "reopened", List.of(), "it is sent already, or not found good yet", q -> q.reopen(id));
    }

    /** See {@link org.roundsman.dispatch.MonthDesk#send}. */
    public void send(long id) {
        KeptReport report = find(id);
        ReportPlan plan = plans.apply(report.customerId());
        boolean may =
                report.state() == ReportState.REVIEWED || report.state() == ReportState.TO_REVIEW && !plan.approval();
        if (!may) {
            throw new DeskRejected(
                    report.state() == ReportState.TO_REVIEW
                            ? "This report cannot be sent: somebody has to find it good first."
                            : "This report cannot be sent: it is "
                                    + report.state().word() + ".");
        }
        requireWay(plan.recipients(), "This report cannot be sent: the customer's plan names no recipients.");
        Instant now = parts.now();
        Instant giveUp = now.plus(parts.config().giveUpAfter());
        parts.store().whole((rows, connection) -> {
            if (!Way.set(rows, report, plan.recipients(), now, giveUp)) {
                throw new DeskRejected("Somebody else was quicker: look at the report again.");
            }
            parts.note(connection, "sent", report, recipients(plan.recipients()));
            return null;
        });
    }

    /** See {@link org.roundsman.dispatch.MonthDesk#sendAgain}. */
    public void sendAgain(long id, List<String> to) {
        requireWay(to, "Name at least one address to send it to.");
        Instant now = parts.now();
        Instant giveUp = now.plus(parts.config().giveUpAfter());
        parts.store().whole((rows, connection) -> {
            KeptReport report = new ShelfTable(rows).find(null, id).orElseThrow(Reviewing::gone);
            boolean onWay = report.state() == ReportState.SENT || report.state() == ReportState.SENDING;
            if (!onWay && !new QueueTable(rows).onWayAgain(id)) {
                throw new DeskRejected("Only a report that was sent can be sent again.");
            }
            new MailTable(rows).add(id, to, now, giveUp);
            parts.note(connection, "sent again", report, recipients(to));
            return null;
        });
    }

    private void requireWay(List<String> to, String nobody) {
        if (to.isEmpty()) {
            throw new DeskRejected(nobody);
        }
        if (to.size() > MOST_RECIPIENTS) {
            throw new DeskRejected("Name at most " + MOST_RECIPIENTS + " addresses.");
        }
        for (String one : to) {
            if (!MailAddress.valid(one)) {
                throw new DeskRejected(one + " is no mail address.");
            }
        }
        if (!mailOpen.getAsBoolean()) {
            throw new DeskRejected("No mail can be sent: no mail server is set up.");
        }
    }

    private static List<FieldChange> recipients(List<String> to) {
        return List.of(new FieldChange("recipients", "", String.join(", ", to)));
    }

    private void move(
            KeptReport report, String action, List<FieldChange> changes, String otherwise, Predicate<QueueTable> move) {
        parts.store().whole((rows, connection) -> {
            if (!move.test(new QueueTable(rows))) {
                throw new DeskRejected("This cannot be done with the report: " + otherwise + ".");
            }
            parts.note(connection, action, report, changes);
            return null;
        });
    }

    private KeptReport find(long id) {
        return new ShelfTable(parts.store().rows()).find(null, id).orElseThrow(Reviewing::gone);
    }

    private static DeskRejected gone() {
        return new DeskRejected("This report is not there any more.");
    }
}
