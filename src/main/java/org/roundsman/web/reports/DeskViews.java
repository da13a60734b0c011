package org.roundsman.web.reports;

import jakarta.enterprise.context.RequestScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import org.roundsman.dispatch.DeskLine;
import org.roundsman.dispatch.DeskMonth;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.MonthDesk;
import org.roundsman.dispatch.ReportMails;
import org.roundsman.dispatch.ReportState;
import org.roundsman.fleet.Customers;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** Makes the month's desk out of what is kept. */
@RequestScoped
class DeskViews {

    private static final Set<ReportState> BUSY =
            EnumSet.of(ReportState.WAITING, ReportState.BUILDING, ReportState.SENDING);
    private static final Set<ReportState> BUILT =
            EnumSet.of(ReportState.TO_REVIEW, ReportState.REVIEWED, ReportState.SENDING, ReportState.SENT);
    private static final Set<ReportState> REVIEWED =
            EnumSet.of(ReportState.REVIEWED, ReportState.SENDING, ReportState.SENT);
    private static final Set<ReportState> SENT = EnumSet.of(ReportState.SENT);

    private final MonthDesk desk;
    private final ReportMails mails;
    private final Customers customers;
    private final Visitor visitor;
    private final Clock clock;

    DeskViews(MonthDesk desk, ReportMails mails, Customers customers, Visitor visitor, Clock clock) {
        this.desk = desk;
        this.mails = mails;
        this.customers = customers;
        this.visitor = visitor;
        this.clock = clock;
    }

    DeskView.Whole whole(DeskAsked asked, DaysForm days, Faults faults, String said) {
        DeskView view = of(asked);
        return new DeskView.Whole(
                view,
                Choice.months(now(), view.month()),
                Choice.customers(customers.all(visitor.scope()), days.customer()),
                days,
                faults,
                said);
    }

    /** The part that refreshes itself. */
    DeskView of(DeskAsked asked) {
        YearMonth month = asked.wanted(now());
        DeskMonth found = desk.month(month);
        List<DeskRow> all = found.lines().stream().map(this::row).toList();
        boolean busy = BUSY.stream().anyMatch(state -> count(found.lines(), Set.of(state)) > 0);
        return new DeskView(
                month.toString(),
                Periods.month(month),
                DeskAsked.address("/reports", month.minusMonths(1), ""),
                month.isBefore(now()) ? DeskAsked.address("/reports", month.plusMonths(1), "") : "",
                busy ? DeskAsked.address("/reports/progress", month, asked.state()) : "",
                bars(found),
                tabs(found, all, asked.state()),
                all.stream().filter(row -> row.fits(asked.state())).toList(),
                all.size(),
                (int) all.stream().filter(DeskRow::builds).count(),
                review(month),
                (int) found.lines().stream().filter(DeskViews::sendable).count(),
                visitor.person().role().sendsReports());
    }

    private YearMonth now() {
        return YearMonth.from(LocalDate.now(clock));
    }

    private DeskRow row(DeskLine line) {
        boolean lost = line.report()
                .map(KeptReport::mails)
                .filter(counts -> counts.failed() + counts.bounced() > 0)
                .isPresent();
        List<MailLine> undelivered = lost
                ? MailLine.undelivered(
                        mails.of(line.report().get().id()), line.plan().zone())
                : List.of();
        return DeskRow.of(line, undelivered);
    }

    private static boolean sendable(DeskLine line) {
        return !line.plan().recipients().isEmpty()
                && line.report()
                        .filter(report -> report.state() == ReportState.REVIEWED)
                        .isPresent();
    }

    private String review(YearMonth month) {
        OptionalLong next = desk.nextToReview(month, OptionalLong.empty());
        return next.isPresent() ? "/reports/" + next.getAsLong() : "";
    }

    private static int count(List<DeskLine> lines, Set<ReportState> states) {
        return (int) lines.stream()
                .filter(line -> line.report()
                        .map(KeptReport::state)
                        .filter(states::contains)
                        .isPresent())
                .count();
    }

    private static List<DeskView.Bar> bars(DeskMonth month) {
        return List.of(
                bar(month, "built", "Built", BUILT),
                bar(month, "reviewed", "Reviewed", REVIEWED),
                bar(month, "sent", "Sent", SENT));
    }

    private static DeskView.Bar bar(DeskMonth month, String key, String name, Set<ReportState> states) {
        int all = month.lines().size();
        int done = count(month.lines(), states);
        return new DeskView.Bar(key, name, done, all, Words.count(done) + " of " + Words.count(all));
    }

    /** The filters that let somebody through, and the chosen one. */
    private static List<DeskView.Tab> tabs(DeskMonth month, List<DeskRow> rows, String chosen) {
        List<DeskView.Tab> tabs = new ArrayList<>();
        tabs.add(tab(month, rows, "", "All", chosen));
        tabs.add(tab(month, rows, StateWord.NONE.key(), "Not built", chosen));
        for (ReportState state : ReportState.values()) {
            StateWord word = StateWord.of(state);
            String title = word.word().substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                    + word.word().substring(1);
            tabs.add(tab(month, rows, word.key(), title, chosen));
        }
        tabs.add(tab(month, rows, DeskRow.MISSING, "Something missing", chosen));
        tabs.add(tab(month, rows, DeskRow.UNDELIVERED, "Mail did not arrive", chosen));
        return tabs.stream()
                .filter(tab -> tab.here() || !tab.title().endsWith(" (0)"))
                .toList();
    }

    private static DeskView.Tab tab(DeskMonth month, List<DeskRow> rows, String key, String title, String chosen) {
        long count = rows.stream().filter(row -> row.fits(key)).count();
        return new DeskView.Tab(
                title + " (" + Words.count(count) + ")",
                DeskAsked.address("/reports", month.month(), key),
                key.equals(chosen));
    }
}
