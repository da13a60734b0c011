package org.roundsman.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.roundsman.dispatch.store.PlanTable;
import org.roundsman.dispatch.store.PlanTable.Sited;
import org.roundsman.dispatch.store.ShelfTable;
import org.roundsman.dispatch.work.Orders;
import org.roundsman.dispatch.work.Parts;
import org.roundsman.dispatch.work.Reviewing;
import org.roundsman.mail.MailServer;
import org.roundsman.reports.ReportLook;

/**
 * Where the firm's own people have reports built, read them and send them; callers check the role. Whatever cannot be done as
 * things stand throws {@link DeskRejected}, and changes nothing. Every change is audited. Blocks on the database.
 */
@ApplicationScoped
public class MonthDesk {

    private final Parts parts;
    private final ReportPlans plans;
    private final Orders orders;
    private final Reviewing reviewing;

    @Inject
    MonthDesk(Parts parts, ReportPlans plans, MailServer mail) {
        this.parts = parts;
        this.plans = plans;
        this.orders = new Orders(parts, plans::of);
        this.reviewing = new Reviewing(parts, plans::of, () -> mail.state().ready());
    }

    /** Every customer with a site, and its report of that month. */
    public DeskMonth month(YearMonth month) {
        Map<Long, KeptReport> newest =
                newest(month).stream().collect(Collectors.toMap(KeptReport::customerId, Function.identity()));
        Map<Long, ReportPlan> planned = plans.byCustomer();
        List<DeskLine> lines = new ArrayList<>();
        Map<ReportState, Integer> counts = new EnumMap<>(ReportState.class);
        for (ReportState state : ReportState.values()) {
            counts.put(state, 0);
        }
        for (Sited one : new PlanTable(parts.store().rows()).sited()) {
            Optional<KeptReport> report = Optional.ofNullable(newest.get(one.customerId()));
            report.ifPresent(found -> counts.merge(found.state(), 1, Integer::sum));
            ReportPlan plan =
                    Optional.ofNullable(planned.get(one.customerId())).orElseGet(() -> plans.of(one.customerId()));
            lines.add(new DeskLine(one.customerId(), one.name(), one.sites(), report, plan));
        }
        int without =
                (int) lines.stream().filter(line -> line.report().isEmpty()).count();
        return new DeskMonth(month, lines, counts, without);
    }

    private List<KeptReport> newest(YearMonth month) {
        return new ShelfTable(parts.store().rows())
                .newest(month.atDay(1), month.plusMonths(1).atDay(1));
    }

    /**
     * Has that month built for every customer with a site that has no report of it yet, or one that failed; customers for whose
     * sites the month is not over are left out.
     *
     * @return how many were put into the queue
     */
    public int buildAll(YearMonth month) {
        return orders.all(month);
    }

    /**
     * Has a report built. One that was not sent yet is built anew and keeps its remark. One that was sent is worked out at once: a
     * further revision of it is made, or, where later data changed nothing, none.
     *
     * @param to the day after the last one
     * @return its id
     */
    public long build(long customerId, LocalDate from, LocalDate to) {
        return orders.one(customerId, from, to);
    }

    /** Changes the remark of one that was not found good yet. */
    public void remark(long id, String text) {
        reviewing.remark(id, text);
    }

    /** Changes how one that was not found good yet will look. */
    public void look(long id, Locale language, ReportLook.PaperSize paper, boolean costs) {
        reviewing.look(id, language, paper, costs);
    }

    /** Finds one good. */
    public void approve(long id) {
        reviewing.approve(id);
    }

    /** Takes that back; also for one that reached nobody. */
    public void reopen(long id) {
        reviewing.reopen(id);
    }

    /** Sets one on its way to the recipients of the customer's plan. From then on it stays as it is. */
    public void send(long id) {
        reviewing.send(id);
    }

    /**
     * The same with every report of that month that was found good and whose customer's plan names recipients. When one cannot be
     * sent, those before it stay on their way.
     *
     * @return how many
     */
    public int sendAll(YearMonth month) {
        Map<Long, ReportPlan> planned = plans.byCustomer();
        List<KeptReport> good = newest(month).stream()
                .filter(report -> report.state() == ReportState.REVIEWED)
                .filter(report -> !planned.get(report.customerId()).recipients().isEmpty())
                .toList();
        if (good.isEmpty()) {
            throw new DeskRejected("No report of this month was found good and has recipients.");
        }
        good.forEach(report -> reviewing.send(report.id()));
        return good.size();
    }

    /** Sends one that was sent, or reached nobody, to these as it is. */
    public void sendAgain(long id, List<String> to) {
        reviewing.sendAgain(id, ReportPlans.addresses(to));
    }

    /** The next report of the month to be reviewed, by customer's name; after the last one the first. */
    public OptionalLong nextToReview(YearMonth month, OptionalLong after) {
        List<KeptReport> all = newest(month);
        int start = 0;
        for (int i = 0; i < all.size(); i++) {
            if (after.isPresent() && all.get(i).id() == after.getAsLong()) {
                start = i + 1;
            }
        }
        for (int i = 0; i < all.size(); i++) {
            KeptReport one = all.get((start + i) % all.size());
            boolean other = after.isEmpty() || one.id() != after.getAsLong();
            if (other && one.state() == ReportState.TO_REVIEW) {
                return OptionalLong.of(one.id());
            }
        }
        return OptionalLong.empty();
    }
}
