package org.roundsman.web.reports;

import io.quarkus.qute.RawString;
import jakarta.enterprise.context.RequestScoped;
import jakarta.ws.rs.NotFoundException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportPlans;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.people.Role;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportDocument;
import org.roundsman.reports.ReportTables;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** Makes the page of a report out of what is kept. */
@RequestScoped
class ReportViews {

    private final ReportShelf shelf;
    private final ReportDocument document;
    private final ReviewViews reviews;
    private final ReportPlans plans;
    private final Visitor visitor;

    ReportViews(ReportShelf shelf, ReportDocument document, ReviewViews reviews, ReportPlans plans, Visitor visitor) {
        this.shelf = shelf;
        this.document = document;
        this.reviews = reviews;
        this.plans = plans;
        this.visitor = visitor;
    }

    /**
     * The page.
     *
     * @param form what was entered; null for nothing yet
     * @throws NotFoundException when there is no such report for the visitor
     */
    ReportView of(long id, ReviewForm form, Faults faults) {
        KeptReport kept = find(id);
        Optional<Report> says = shelf.figures(visitor.scope(), id);
        boolean inside = visitor.person().role() != Role.VIEWER;
        return new ReportView(
                id,
                kept.customer(),
                Periods.of(kept),
                StateWord.of(kept.state()),
                kept.last(),
                facts(kept, plans.of(kept.customerId()).zone(), inside),
                says.map(report -> document(id, report)).orElse(null),
                revisions(kept),
                says.map(report -> tables(id, report)).orElse(List.of()),
                inside ? reviews.of(kept, visitor.person().role(), form, faults) : null);
    }

    KeptReport find(long id) {
        return shelf.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }

    private RawString document(long id, Report report) {
        return shelf.look(visitor.scope(), id)
                .map(look -> new RawString(document.fragment(report, look)))
                .orElse(null);
    }

    private static List<ReportView.Fact> facts(KeptReport kept, ZoneId zone, boolean inside) {
        List<ReportView.Fact> facts = new ArrayList<>();
        facts.add(new ReportView.Fact("Days", Periods.of(kept)));
        facts.add(new ReportView.Fact("Revision", revision(kept)));
        kept.builtAt().ifPresent(at -> facts.add(new ReportView.Fact("Built", Periods.moment(at, zone))));
        if (inside) {
            kept.reviewedAt()
                    .ifPresent(at -> facts.add(
                            new ReportView.Fact("Reviewed", Periods.moment(at, zone) + " by " + kept.reviewedBy())));
        }
        kept.sentAt().ifPresent(at -> facts.add(new ReportView.Fact("Sent", Periods.moment(at, zone))));
        if (inside && kept.built()) {
            String look = Choice.languageName(kept.language()) + ", " + Choice.paperName(kept.paper())
                    + (kept.costs() ? ", with list prices" : ", without list prices");
            facts.add(new ReportView.Fact("Language and paper", look));
        }
        if (!kept.prints().pdf().isEmpty()) {
            facts.add(new ReportView.Fact("SHA-256 of the PDF", kept.prints().pdf()));
        }
        return facts;
    }

    private static String revision(KeptReport kept) {
        String number = Words.count(kept.revision()) + (kept.last() ? "" : ", a later one replaces it");
        return kept.why().isEmpty() ? number : number + ": " + kept.why();
    }

    private List<ReportView.Revision> revisions(KeptReport kept) {
        return shelf.revisions(visitor.scope(), kept.id()).stream()
                .map(one -> new ReportView.Revision(
                        one.id(),
                        "Revision " + one.revision() + ", " + one.state().word(),
                        one.id() == kept.id()))
                .toList();
    }

    private static List<ReportView.Download> tables(long id, Report report) {
        return ReportTables.of(report).stream()
                .map(table -> new ReportView.Download(
                        table.key().replace('-', ' '), "/reports/" + id + "/tables/" + table.key() + ".csv"))
                .toList();
    }
}
