package org.roundsman.dispatch;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.roundsman.dispatch.work.Making;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportExample;
import org.roundsman.reports.ReportJson;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportMail;
import org.roundsman.reports.ReportSubject;

/**
 * Makes reports without working anything out: the invented example in the name of whoever is asked for, and a PDF of one page. Two
 * PDFs of it never are the same octets, so that a stored one can be told from one made anew.
 */
final class PlainMaking implements Making {

    private final ReportJson json = new ReportJson();
    private final AtomicInteger printed = new AtomicInteger();
    private final AtomicInteger worked = new AtomicInteger();

    /** What is done with the subject before it is worked out: a test may throw, or wait. */
    volatile UnaryOperator<ReportSubject> before = subject -> subject;

    /** What was observed; later data is another. */
    volatile Report observed = ReportExample.full();

    int worked() {
        return worked.get();
    }

    @Override
    public Report figures(ReportSubject subject, Instant asOf) {
        worked.incrementAndGet();
        ReportSubject about = before.apply(subject);
        Report of = observed;
        return new Report(
                of.form(),
                about,
                asOf,
                of.invented(),
                of.whole(),
                of.service(),
                of.crowd(),
                of.sites(),
                of.outages(),
                of.radios(),
                of.rooms(),
                of.equipment(),
                of.handling(),
                of.work(),
                of.recommendations());
    }

    @Override
    public ReportJson stored() {
        return json;
    }

    @Override
    public byte[] pdf(Report report, ReportLook look) {
        try (PDDocument document = new PDDocument();
                ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            PDPage page = new PDPage();
            document.addPage(page);
            try (PDPageContentStream text = new PDPageContentStream(document, page)) {
                text.beginText();
                text.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA), 12);
                text.newLineAtOffset(72, 700);
                text.showText(report.subject().customer() + ", " + look.firm().name() + ", "
                        + look.remark().replace("\n", " "));
                text.endText();
            }
            document.getDocumentInformation().setTitle("Print " + printed.incrementAndGet());
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public ReportMail mail(Report report, ReportLook look) {
        String words = "Wi-Fi of " + report.subject().customer();
        return new ReportMail(words, words + "\n", "<p>" + words + "</p>");
    }

    @Override
    public String fileName(Report report, ReportLook look) {
        return "report-" + report.subject().from() + "-" + look.revision() + ".pdf";
    }

    @Override
    public List<Locale> languages() {
        return List.of(Locale.forLanguageTag("en-GB"), Locale.forLanguageTag("de-DE"));
    }
}
