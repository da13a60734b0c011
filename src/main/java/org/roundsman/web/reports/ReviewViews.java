package org.roundsman.web.reports;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.OptionalLong;
import org.roundsman.dispatch.DeskLine;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.MonthDesk;
import org.roundsman.dispatch.ReportLinks;
import org.roundsman.dispatch.ReportMails;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.ReportPlans;
import org.roundsman.dispatch.ReportState;
import org.roundsman.people.Role;
import org.roundsman.reports.ReportWords;
import org.roundsman.web.page.Faults;

/** Makes what the firm's own people see beside a report. */
@ApplicationScoped
class ReviewViews {

    private final MonthDesk desk;
    private final ReportPlans plans;
    private final ReportMails mails;
    private final ReportLinks links;
    private final ReportWords words;

    ReviewViews(MonthDesk desk, ReportPlans plans, ReportMails mails, ReportLinks links, ReportWords words) {
        this.desk = desk;
        this.plans = plans;
        this.mails = mails;
        this.links = links;
        this.words = words;
    }

    /**
     * What stands beside the report.
     *
     * @param form what was entered; null for nothing yet
     */
    ReviewView of(KeptReport report, Role role, ReviewForm form, Faults faults) {
        ReportPlan plan = plans.of(report.customerId());
        ReviewForm fresh = ReviewForm.of(report, plan.recipients());
        ReviewForm shown = form == null ? fresh : form.over(fresh);
        return new ReviewView(
                report.month()
                        .map(month -> DeskAsked.address("/reports", month, ""))
                        .orElse("/reports/archive"),
                busy(report),
                role.sendsReports(),
                report.failure(),
                acts(report, plan, role.sendsReports()),
                report.month().map(month -> steps(report, month)).orElse(new ReviewView.Steps("", "")),
                new ReviewView.Entry(
                        shown,
                        faults,
                        Choice.languages(words.languages(), Asked.text(shown.language())),
                        Choice.papers(Asked.text(shown.paper()))),
                sending(report, plan));
    }

    static boolean busy(KeptReport report) {
        return switch (report.state()) {
            case WAITING, BUILDING, SENDING -> true;
            case TO_REVIEW, REVIEWED, SENT, FAILED -> false;
        };
    }

    private static ReviewView.Acts acts(KeptReport report, ReportPlan plan, boolean sends) {
        ReportState state = report.state();
        boolean reviewed = state == ReportState.REVIEWED || state == ReportState.TO_REVIEW && !plan.approval();
        boolean nobody = state == ReportState.FAILED
                && report.mails().failed() + report.mails().bounced() > 0;
        boolean sent = state == ReportState.SENT;
        return new ReviewView.Acts(
                state.open() && report.built() && !busy(report) && !nobody,
                sends && state == ReportState.TO_REVIEW,
                sends && (state == ReportState.REVIEWED || nobody),
                report.last() && !busy(report),
                sends && reviewed,
                sends && (sent || nobody),
                sends && sent);
    }

    private ReviewView.Steps steps(KeptReport report, YearMonth month) {
        String previous = "";
        for (DeskLine line : desk.month(month).lines()) {
            if (line.customerId() == report.customerId()) {
                break;
            }
            previous = line.report().map(one -> "/reports/" + one.id()).orElse(previous);
        }
        OptionalLong next = next(report);
        return new ReviewView.Steps(previous, next.isPresent() ? "/reports/" + next.getAsLong() : "");
    }

    /** The next report of its month that is to be reviewed. */
    OptionalLong next(KeptReport report) {
        OptionalLong next = report.month().isEmpty()
                ? OptionalLong.empty()
                : desk.nextToReview(report.month().get(), OptionalLong.of(report.id()));
        return next.isPresent() && next.getAsLong() == report.id() ? OptionalLong.empty() : next;
    }

    private ReviewView.Sending sending(KeptReport report, ReportPlan plan) {
        ZoneId zone = plan.zone();
        return new ReviewView.Sending(
                plan.recipients(),
                "/reports/plans/" + report.customerId(),
                mails.of(report.id()).stream()
                        .map(line -> MailLine.of(line, zone))
                        .toList(),
                links.of(report.id()).stream()
                        .map(link -> LinkLine.of(link, zone))
                        .toList());
    }
}
