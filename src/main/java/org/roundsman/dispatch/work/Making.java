package org.roundsman.dispatch.work;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportJson;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportMail;
import org.roundsman.reports.ReportSubject;

/** Makes reports, and documents of them. The same figures and the same look make the same document. Blocks. */
public interface Making {

    /** Works the figures out. */
    Report figures(ReportSubject subject, Instant asOf);

    /** How figures are stored. */
    ReportJson stored();

    /** The figures as they are stored. */
    default byte[] json(Report report) {
        return stored().write(report);
    }

    default Report read(byte[] json) {
        return stored().read(json);
    }

    /** SHA-256 in hexadecimal digits over what later data can change. */
    default String observed(Report report) {
        return stored().observed(report);
    }

    /** SHA-256 in hexadecimal digits. */
    default String sha256(byte[] octets) {
        return stored().sha256(octets);
    }

    byte[] pdf(Report report, ReportLook look);

    /** The mail that the PDF is attached to. */
    ReportMail mail(Report report, ReportLook look);

    /** Name of the PDF, in ASCII. */
    String fileName(Report report, ReportLook look);

    /** What reports can be written in; the usual one first. */
    List<Locale> languages();
}
