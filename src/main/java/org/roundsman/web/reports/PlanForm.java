package org.roundsman.web.reports;

import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.dispatch.PlanDraft;
import org.roundsman.dispatch.ReportPlan;

/** What the form of a plan sent, as text. Boxes say {@code yes} when they are ticked. */
record PlanForm(
        @RestForm String active,
        @RestForm String day,
        @RestForm String hour,
        @RestForm String zone,
        @RestForm String language,
        @RestForm String paper,
        @RestForm String recipients,
        @RestForm String approval,
        @RestForm String costs,
        @RestForm String keepMonths) {

    PlanForm {
        active = Asked.text(active);
        day = Asked.text(day);
        hour = Asked.text(hour);
        zone = Asked.text(zone);
        language = Asked.text(language);
        paper = Asked.text(paper);
        recipients = Asked.lines(recipients);
        approval = Asked.text(approval);
        costs = Asked.text(costs);
        keepMonths = Asked.text(keepMonths);
    }

    static PlanForm of(ReportPlan plan) {
        return new PlanForm(
                box(plan.active()),
                String.valueOf(plan.day()),
                String.valueOf(plan.hour()),
                plan.zone().getId(),
                plan.language().toLanguageTag(),
                plan.paper().name(),
                String.join("\n", plan.recipients()),
                box(plan.approval()),
                box(plan.costs()),
                String.valueOf(plan.keepMonths()));
    }

    private static String box(boolean ticked) {
        return ticked ? "yes" : "";
    }

    /** As entered; what is no number becomes one that no plan takes, so that its field is named. */
    PlanDraft draft() {
        return new PlanDraft(
                Asked.ticked(active),
                Asked.small(day),
                Asked.small(hour),
                zone,
                language,
                Papers.find(paper).orElse(null),
                Asked.addresses(recipients),
                Asked.ticked(approval),
                Asked.ticked(costs),
                Asked.small(keepMonths));
    }

    public boolean buildsByItself() {
        return Asked.ticked(active);
    }

    public boolean needsApproval() {
        return Asked.ticked(approval);
    }

    public boolean showsCosts() {
        return Asked.ticked(costs);
    }
}
