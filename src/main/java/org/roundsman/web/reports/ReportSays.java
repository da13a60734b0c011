package org.roundsman.web.reports;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.people.SignedIn;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportJson;

/**
 * The figures of a report, as far as somebody is to see them: a customer's own people learn list prices only where the report
 * shows them.
 */
@ApplicationScoped
public class ReportSays {

    private final ReportShelf shelf;
    private final ReportJson json;

    ReportSays(ReportShelf shelf, ReportJson json) {
        this.shelf = shelf;
        this.json = json;
    }

    /** What it says; empty before it is built, and where the person does not see the report. */
    public Optional<Report> figures(SignedIn person, long id) {
        Optional<Report> figures = shelf.figures(person.scope(), id);
        return hidden(person, id) ? figures.map(Report::withoutCosts) : figures;
    }

    /** The same as JSON: as it is stored, unless prices are left out. */
    public Optional<byte[]> json(SignedIn person, long id) {
        return hidden(person, id) ? figures(person, id).map(json::write) : shelf.json(person.scope(), id);
    }

    private boolean hidden(SignedIn person, long id) {
        return !person.role().seesPrices()
                && !shelf.find(person.scope(), id).map(KeptReport::costs).orElse(false);
    }
}
