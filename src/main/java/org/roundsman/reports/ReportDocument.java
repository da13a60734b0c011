package org.roundsman.reports;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.paper.Paper;
import org.roundsman.reports.document.Layout;
import org.roundsman.reports.document.Pages;

/** Makes of a report what people read: a part of a page, a PDF, a mail. Thread-safe. */
@ApplicationScoped
public class ReportDocument {

    private static final int LONGEST_NAME = 60;

    private final ReportWords words;
    private final Paper paper;
    private final Pages pages = new Pages();

    @Inject
    public ReportDocument(ReportWords words, Paper paper) {
        this.words = words;
        this.paper = paper;
    }

    /** XHTML for within a page of ours: headings from the second level on, a section with an id for each anchor, no styles. */
    public String fragment(Report report, ReportLook look) {
        return layout(report, look).fragment();
    }

    /** Tagged pages with bookmarks and our own fonts inside. */
    public byte[] pdf(Report report, ReportLook look) {
        return paper.pdf(layout(report, look).paper(paper.style("report.css")));
    }

    /** @param link where the report can be fetched, if it can */
    public ReportMail mail(Report report, ReportLook look, Optional<String> link) {
        return layout(report, look).mail(link.orElse(""));
    }

    private Layout layout(Report report, ReportLook look) {
        return new Layout(
                report, look, words.catalogue(look.language()), words.summary(report, look.language()), pages);
    }

    /** Such as {@code pebblegate-dental-2026-10.pdf}, and {@code ...-2.pdf} for the second revision. */
    public String fileName(Report report, ReportLook look) {
        ReportSubject subject = report.subject();
        String time = subject.month().map(Object::toString).orElse(subject.from() + "-to-" + subject.last());
        String revision = look.revision() > 1 ? "-" + look.revision() : "";
        return plain(subject.customer()) + "-" + time + revision + ".pdf";
    }

    /** Letters and digits of ASCII with hyphens between. */
    private static String plain(String name) {
        String letters = Normalizer.normalize(
                        name.replace("ß", "ss")
                                .replace("æ", "ae")
                                .replace("Æ", "ae")
                                .replace("ø", "o")
                                .replace("Ø", "o")
                                .replace("ł", "l")
                                .replace("Ł", "l"),
                        Normalizer.Form.NFKD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-");
        String cut =
                letters.substring(0, Math.min(LONGEST_NAME, letters.length())).replaceAll("^-|-$", "");
        return cut.isEmpty() ? "report" : cut;
    }
}
