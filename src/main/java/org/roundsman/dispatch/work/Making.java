package org.roundsman.dispatch.work;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.ReportMail;
import org.roundsman.reports.ReportSubject;

/** Makes reports, and documents of them. The same figures and the same look make the same document. Blocks. */
public interface Making {

    /** Works the figures out. */
    Report figures(ReportSubject subject, Instant asOf);

    /** The figures as they are stored. */
    byte[] json(Report report);

    Report read(byte[] json);

    /** SHA-256 in hexadecimal digits over what later data can change. */
    String observed(Report report);

    /** SHA-256 in hexadecimal digits. */
    String sha256(byte[] octets);

    byte[] pdf(Report report, ReportLook look);

    /** The mail that the PDF is attached to. */
    ReportMail mail(Report report, ReportLook look);

    /** Name of the PDF, in ASCII. */
    String fileName(Report report, ReportLook look);

    /** What reports can be written in; the usual one first. */
    List<Locale> languages();
}
