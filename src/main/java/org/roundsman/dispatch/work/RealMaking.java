package org.roundsman.dispatch.work;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportDocument;
import org.roundsman.reports.ReportFigures;
import org.roundsman.reports.ReportJson;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportMail;
import org.roundsman.reports.ReportSubject;
import org.roundsman.reports.ReportWords;

/** Has package {@code reports} make them. */
@ApplicationScoped
class RealMaking implements Making {

    private final ReportFigures figures;
    private final ReportJson json;
    private final ReportDocument document;
    private final ReportWords words;

    @Inject
    RealMaking(ReportFigures figures, ReportJson json, ReportDocument document, ReportWords words) {
        this.figures = figures;
        this.json = json;
        this.document = document;
        this.words = words;
    }

    @Override
    public Report figures(ReportSubject subject, Instant asOf) {
        return figures.of(subject, asOf);
    }

    @Override
    public ReportJson stored() {
        return json;
    }

    @Override
    public byte[] pdf(Report report, ReportLook look) {
        return document.pdf(report, look);
    }

    @Override
    public ReportMail mail(Report report, ReportLook look) {
        return document.mail(report, look, Optional.empty());
    }

    @Override
    public String fileName(Report report, ReportLook look) {
        return document.fileName(report, look);
    }

    @Override
    public List<Locale> languages() {
        return words.languages();
    }
}
